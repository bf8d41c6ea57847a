import { forward, type Equations } from './equations';
import type { ModelFactor } from './mixed-model';
import type { Solution } from './solution';
import { sumByColumn } from './sum-by-column';

export interface ScoreParts {
  /** |Z' P y|² of every component and, last, |P y|², relative to the residual variance. */
  squares: Float64Array;
  /** (V_i P y)' P (V_j P y) of every pair of variances, to be divided by the cube of the residual variance. */
  information: Float64Array[];
}

/**
 * The parts of the score and of the average information that come from the readings.
 *
 * V_i P y has one value for every level of a factor (r below), one for every cell for the cell component, and is
 * P y itself for the residual; so sums over readings become sums over levels or cells.
 * Source: Gilmour, Thompson & Cullis (1995), Biometrics 51, 1440–1450.
 */
export function scoreParts(equations: Equations, solution: Solution): ScoreParts {
  const { model } = equations;
  const { components, cellComponent } = model;
  const squares = new Float64Array(components + 1);
  const information = Array.from(squares, () => new Float64Array(components + 1));
  const set = (i: number, k: number, value: number) => {
    (information[i] as Float64Array)[k] = value;
    (information[k] as Float64Array)[i] = value;
  };
  const factors = model.factors.filter(({ component }) => component >= 0);
  const scores = levelScores(equations, solution);
  const sums = crossTimesScores(equations, scores);
  for (const factor of factors) squares[factor.component] = dotColumns(factor, scores, scores);
  const cell = cellScores(equations, solution);
  squares[components] = cell.residualSquares;
  sums[components] = cell.residualSums;
  set(components, components, cell.ee);
  if (cellComponent >= 0) {
    squares[cellComponent] = cell.squares;
    sums[cellComponent] = cell.sums;
    set(cellComponent, cellComponent, cell.uu);
    set(cellComponent, components, cell.ue);
  }
  for (const factor of factors) {
    sums.forEach((sum, k) => {
      set(factor.component, k, dotColumns(factor, scores, sum));
    });
  }
  subtractProjection(equations, sums, information);
  return { squares, information };
}

/** r = Z' P y by column. Where the equations hold it is v / Λ; where Λ is next to 0 it is summed over cells. */
function levelScores({ model, scale, crossDiagonal }: Equations, { v, weighted }: Solution): Float64Array {
  const scores = new Float64Array(model.columns);
  for (const { component, column, first, width } of model.factors) {
    if (component < 0) continue;
    const own = scale[first] as number;
    if (own * own * (crossDiagonal[first] as number) > 1e-6) {
      for (let j = first; j < first + width; j++) scores[j] = (v[j] as number) / own;
    } else {
      for (let s = 0; s < model.cells; s++) {
        const j = column[s] as number;
        scores[j] = (scores[j] as number) + (weighted[s] as number);
      }
    }
  }
  return scores;
}

/** X' W Z_i r_i of every factor's component, in one pass over the elements of X' W X. */
function crossTimesScores({ model, cross, crossDiagonal }: Equations, scores: Float64Array): Float64Array[] {
  const { columns, sparse, start, row } = model;
  const size = columns - sparse;
  const none = new Float64Array(columns);
  const sums: Float64Array[] = [];
  const ownSums: Float64Array[] = Array.from({ length: columns }, () => none);
  for (const { component, first, width } of model.factors) {
    if (component < 0) continue;
    const own = new Float64Array(columns);
    sums[component] = own;
    ownSums.fill(own, first, first + width);
  }
  for (let j = 0; j < columns; j++) {
    const own = ownSums[j] as Float64Array;
    own[j] = (own[j] as number) + (crossDiagonal[j] as number) * (scores[j] as number);
  }
  for (let j = 0; j < sparse; j++) {
    const own = ownSums[j] as Float64Array;
    const score = scores[j] as number;
    const to = start[j + 1] as number;
    for (let t = start[j] as number; t < to; t++) {
      const i = row[t] as number;
      const c = cross[t] as number;
      const other = ownSums[i] as Float64Array;
      own[i] = (own[i] as number) + c * score;
      other[j] = (other[j] as number) + c * (scores[i] as number);
    }
  }
  for (let i = 0; i < size; i++) {
    const own = ownSums[sparse + i] as Float64Array;
    for (let j = 0; j < i; j++) {
      const c = cross[row.length + i * size + j] as number;
      const other = ownSums[sparse + j] as Float64Array;
      own[sparse + j] = (own[sparse + j] as number) + c * (scores[sparse + i] as number);
      other[sparse + i] = (other[sparse + i] as number) + c * (scores[sparse + j] as number);
    }
  }
  return sums;
}

/** The sums over cells: of the cell component (u, the cell part of P y) and of the residual (u / n). */
function cellScores({ model, weight, product }: Equations, { weighted }: Solution) {
  const { cells, n, withinSs, cellComponent } = model;
  let [uu, ue, ee, squares, residualSquares] = [0, 0, withinSs, 0, withinSs];
  for (let s = 0; s < cells; s++) {
    const u = weighted[s] as number;
    const e = u / (n[s] as number);
    const w = weight[s] as number;
    product[s] = w * e;
    uu += w * u * u;
    ue += w * u * e;
    ee += w * e * e;
    squares += u * u;
    residualSquares += u * e;
  }
  const residualSums = sumByColumn(model, product);
  if (cellComponent < 0) return { uu, ue, ee, squares, residualSquares, residualSums, sums: residualSums };
  for (let s = 0; s < cells; s++) product[s] = (weight[s] as number) * (weighted[s] as number);
  return { uu, ue, ee, squares, residualSquares, residualSums, sums: sumByColumn(model, product) };
}

function dotColumns({ first, width }: ModelFactor, a: Float64Array, b: Float64Array): number {
  let sum = 0;
  for (let j = first; j < first + width; j++) sum += (a[j] as number) * (b[j] as number);
  return sum;
}

/** Takes b_i' A⁻¹ b_k off every element, b_i = Λ X' W f_i. */
function subtractProjection(
  equations: Equations,
  sums: readonly Float64Array[],
  information: readonly Float64Array[],
): void {
  const { model, scale, pivot } = equations;
  for (const b of sums) {
    for (let j = 0; j < model.columns; j++) b[j] = (b[j] as number) * (scale[j] as number);
    forward(equations, b);
    for (let j = 0; j < model.sparse; j++) b[j] = (b[j] as number) / Math.sqrt(pivot[j] as number);
  }
  sums.forEach((one, i) => {
    for (let k = 0; k <= i; k++) {
      const other = sums[k] as Float64Array;
      let sum = 0;
      for (let j = 0; j < model.columns; j++) sum += (one[j] as number) * (other[j] as number);
      const value = ((information[i] as Float64Array)[k] as number) - sum;
      (information[i] as Float64Array)[k] = value;
      (information[k] as Float64Array)[i] = value;
    }
  });
}

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
export function scoreParts(equations: Equations, { weighted }: Solution): ScoreParts {
  const { model, weight, product } = equations;
  const { cells, n, components, cellComponent, withinSs } = model;
  const byColumn = sumByColumn(model, weighted);
  const squares = new Float64Array(components + 1);
  const information = Array.from(squares, () => new Float64Array(components + 1));
  const set = (i: number, k: number, value: number) => {
    (information[i] as Float64Array)[k] = value;
    (information[k] as Float64Array)[i] = value;
  };
  const solved: Float64Array[] = [];
  const factors = model.factors.filter(({ component }) => component >= 0);
  for (const factor of factors) {
    squares[factor.component] = dotColumns(factor, byColumn, byColumn);
    for (let s = 0; s < cells; s++) {
      product[s] = (weight[s] as number) * (byColumn[factor.column[s] as number] as number);
    }
    solved[factor.component] = sumByColumn(model, product);
  }
  let [uu, ue, ee, cellSquares, residualSquares] = [0, 0, withinSs, 0, withinSs];
  for (let s = 0; s < cells; s++) {
    const u = weighted[s] as number;
    const e = u / (n[s] as number);
    const w = weight[s] as number;
    product[s] = w * e;
    uu += w * u * u;
    ue += w * u * e;
    ee += w * e * e;
    cellSquares += u * u;
    residualSquares += u * e;
  }
  solved[components] = sumByColumn(model, product);
  squares[components] = residualSquares;
  set(components, components, ee);
  if (cellComponent >= 0) {
    for (let s = 0; s < cells; s++) product[s] = (weight[s] as number) * (weighted[s] as number);
    solved[cellComponent] = sumByColumn(model, product);
    squares[cellComponent] = cellSquares;
    set(cellComponent, cellComponent, uu);
    set(cellComponent, components, ue);
  }
  for (const factor of factors) {
    solved.forEach((sums, k) => set(factor.component, k, dotColumns(factor, byColumn, sums)));
  }
  subtractProjection(equations, solved, information);
  return { squares, information };
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
    const line = information[i] as Float64Array;
    sums.forEach((other, k) => {
      let sum = 0;
      for (let j = 0; j < model.columns; j++) sum += (one[j] as number) * (other[j] as number);
      line[k] = (line[k] as number) - sum;
    });
  });
}

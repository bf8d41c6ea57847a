import {
  choleskyInPlace,
  inverseFromCholesky,
  solveLower,
  solveUpper,
} from '@/lib/stats/linear-algebra/cholesky';
import { storeLength, type MixedModel } from './mixed-model';

/**
 * Henderson's mixed-model equations A v = c of a model on cells, relative to the residual variance:
 * A = Λ X' W X Λ + I on the random columns, W = diag(n / (1 + φ_cell n)), Λ = √φ for a random column and 1 for a
 * fixed one. Because the random columns are scaled by Λ, a variance of exactly 0 is nothing special.
 * Source: Bates, Mächler, Bolker & Walker (2015), J. Statist. Software 67(1), section 3; Henderson (1975).
 */
export interface Equations {
  model: MixedModel;
  /** W, one a cell. */
  weight: Float64Array;
  /** X' W X without Λ: off-diagonal elements in the model's layout, and the diagonal. */
  cross: Float64Array;
  crossDiagonal: Float64Array;
  /** Λ by column. */
  scale: Float64Array;
  /** L D L' of the eliminated columns; `dense` is the Cholesky factor of the remainder. */
  pivot: Float64Array;
  factor: Float64Array;
  dense: Float64Array;
  /** The elements of A⁻¹ at the places of `cross`, after `selectInverse`. */
  inverse: Float64Array;
  inverseDiagonal: Float64Array;
  /** W (mean − fitted) of the last solution. */
  weighted: Float64Array;
  /** Room for one value a cell. */
  product: Float64Array;
  assembledFor: number;
}

export function newEquations(model: MixedModel): Equations {
  const dense = model.columns - model.sparse;
  return {
    model,
    weight: new Float64Array(model.cells),
    cross: new Float64Array(storeLength(model)),
    crossDiagonal: new Float64Array(model.columns),
    scale: new Float64Array(model.columns),
    pivot: new Float64Array(model.sparse),
    factor: new Float64Array(model.row.length),
    dense: new Float64Array(dense * dense),
    inverse: new Float64Array(storeLength(model)),
    inverseDiagonal: new Float64Array(model.columns),
    weighted: new Float64Array(model.cells),
    product: new Float64Array(model.cells),
    assembledFor: NaN,
  };
}

/** Sets W and X' W X for a cell ratio φ; nothing to do where they stand already (no cell effect: W = n always). */
export function assemble(equations: Equations, cellRatio: number): void {
  if (equations.assembledFor === cellRatio) return;
  equations.assembledFor = cellRatio;
  const { model, weight, cross, crossDiagonal } = equations;
  let total = 0;
  for (let s = 0; s < model.cells; s++) {
    const n = model.n[s] as number;
    const w = n / (cellRatio * n + 1);
    weight[s] = w;
    total += w;
  }
  cross.fill(0);
  crossDiagonal.fill(0);
  for (const { column } of model.factors) {
    for (let s = 0; s < model.cells; s++) {
      const j = column[s] as number;
      if (j >= 0) crossDiagonal[j] = (crossDiagonal[j] as number) + (weight[s] as number);
    }
  }
  for (const { position } of model.pairs) {
    for (let s = 0; s < model.cells; s++) {
      const p = position[s] as number;
      if (p >= 0) cross[p] = (cross[p] as number) + (weight[s] as number);
    }
  }
  crossDiagonal[model.columns - 1] = total;
  copyDiagonalToIntercept(equations);
}

/** Every cell has the intercept, so a column meets it as it meets itself. */
function copyDiagonalToIntercept({ model, cross, crossDiagonal }: Equations): void {
  for (let j = 0; j < model.sparse; j++)
    cross[(model.start[j + 1] as number) - 1] = crossDiagonal[j] as number;
  const size = model.columns - model.sparse;
  const last = model.row.length + (size - 1) * size;
  for (let i = 0; i < size - 1; i++) cross[last + i] = crossDiagonal[model.sparse + i] as number;
}

export function setScale({ model, scale }: Equations, ratios: Float64Array): void {
  scale[model.columns - 1] = 1;
  for (const { component, first, width } of model.factors) {
    scale.fill(component < 0 ? 1 : Math.sqrt(ratios[component] as number), first, first + width);
  }
}

/**
 * Factorises A and returns ln |A|, or names the column (from 0) whose pivot is not above `least` times its
 * diagonal element: a fixed column that depends on others.
 */
export function factorise(
  equations: Equations,
  least = 0,
): { logDeterminant: number } | { dependent: number } {
  const { model, cross, crossDiagonal, scale, pivot, factor, dense } = equations;
  const { sparse, start, row } = model;
  const size = model.columns - sparse;
  const nonzeros = row.length;
  const penalty = penaltyByColumn(model);
  for (let j = 0; j < sparse; j++) {
    const own = scale[j] as number;
    pivot[j] = own * own * (crossDiagonal[j] as number) + (penalty[j] as number);
    for (let t = start[j] as number; t < (start[j + 1] as number); t++) {
      factor[t] = own * (scale[row[t] as number] as number) * (cross[t] as number);
    }
  }
  for (let i = 0; i < size; i++) {
    const own = scale[sparse + i] as number;
    for (let j = 0; j < i; j++) {
      dense[i * size + j] = own * (scale[sparse + j] as number) * (cross[nonzeros + i * size + j] as number);
    }
    dense[i * size + i] = own * own * (crossDiagonal[sparse + i] as number) + (penalty[sparse + i] as number);
  }
  let logDeterminant = 0;
  for (let j = 0; j < sparse; j++) {
    const a = pivot[j] as number;
    const own = scale[j] as number;
    if (!(a > least * (own * own * (crossDiagonal[j] as number) + (penalty[j] as number))))
      return { dependent: j };
    logDeterminant += Math.log(a);
    eliminate(equations, j);
  }
  const bad = choleskyInPlace(dense, size, 0, least);
  if (bad >= 0) return { dependent: sparse + bad };
  for (let i = 0; i < size; i++) logDeterminant += 2 * Math.log(dense[i * size + i] as number);
  return { logDeterminant };
}

/** Takes column j out: subtracts b b' / a from the columns it meets, and keeps b / a. */
function eliminate({ model, pivot, factor, dense }: Equations, j: number): void {
  const { sparse, start, row } = model;
  const size = model.columns - sparse;
  const from = start[j] as number;
  const to = start[j + 1] as number;
  const a = pivot[j] as number;
  for (let t = from; t < to; t++) {
    const target = row[t] as number;
    const l = (factor[t] as number) / a;
    if (l === 0) continue;
    if (target < sparse) {
      pivot[target] = (pivot[target] as number) - l * (factor[t] as number);
      let p = start[target] as number;
      for (let u = t + 1; u < to; u++) {
        while ((row[p] as number) !== (row[u] as number)) p++;
        factor[p] = (factor[p] as number) - l * (factor[u] as number);
      }
    } else {
      for (let u = t; u < to; u++) {
        dense[((row[u] as number) - sparse) * size + (target - sparse)] =
          (dense[((row[u] as number) - sparse) * size + (target - sparse)] as number) -
          l * (factor[u] as number);
      }
    }
  }
  for (let t = from; t < to; t++) factor[t] = (factor[t] as number) / a;
}

function penaltyByColumn(model: MixedModel): Float64Array {
  const penalty = new Float64Array(model.columns);
  for (const { component, first, width } of model.factors) {
    if (component >= 0) penalty.fill(1, first, first + width);
  }
  return penalty;
}

/** Solves L z = c in place: afterwards c' A⁻¹ d = Σ z_c z_d / D, D the pivots, and 1 for the dense columns. */
export function forward({ model, factor, dense }: Equations, vector: Float64Array): void {
  const { sparse, start, row } = model;
  for (let j = 0; j < sparse; j++) {
    const value = vector[j] as number;
    if (value === 0) continue;
    for (let t = start[j] as number; t < (start[j + 1] as number); t++) {
      vector[row[t] as number] = (vector[row[t] as number] as number) - (factor[t] as number) * value;
    }
  }
  solveLower(dense, model.columns - sparse, vector, sparse);
}

/** From z = L⁻¹ c to A⁻¹ c, in place. */
export function backward({ model, factor, pivot, dense }: Equations, vector: Float64Array): void {
  const { sparse, start, row } = model;
  solveUpper(dense, model.columns - sparse, vector, sparse);
  for (let j = sparse - 1; j >= 0; j--) {
    let value = (vector[j] as number) / (pivot[j] as number);
    for (let t = start[j] as number; t < (start[j + 1] as number); t++) {
      value -= (factor[t] as number) * (vector[row[t] as number] as number);
    }
    vector[j] = value;
  }
}

/** Elements of A⁻¹ where X' W X has elements (Takahashi, Fagan & Chen 1973), with the diagonal. */
export function selectInverse(equations: Equations): void {
  const { model, pivot, factor, dense, inverse, inverseDiagonal } = equations;
  const { sparse, start, row } = model;
  const size = model.columns - sparse;
  const nonzeros = row.length;
  inverseFromCholesky(dense, size, inverse, 0, nonzeros);
  for (let i = 0; i < size; i++) inverseDiagonal[sparse + i] = inverse[nonzeros + i * size + i] as number;
  for (let j = sparse - 1; j >= 0; j--) {
    const from = start[j] as number;
    const to = start[j + 1] as number;
    inverse.fill(0, from, to);
    for (let t = from; t < to; t++) addInverseColumn(equations, t, from, to);
    let diagonal = 1 / (pivot[j] as number);
    for (let t = from; t < to; t++) diagonal -= (factor[t] as number) * (inverse[t] as number);
    inverseDiagonal[j] = diagonal;
  }
}

/** Subtracts l_t × (column row[t] of the inverse) from the elements `from` to `to`, and its mirror image. */
function addInverseColumn(
  { model, factor, inverse, inverseDiagonal }: Equations,
  t: number,
  from: number,
  to: number,
): void {
  const { sparse, start, row } = model;
  const size = model.columns - sparse;
  const l = factor[t] as number;
  const column = row[t] as number;
  if (column >= sparse) {
    const own = model.row.length + (column - sparse) * size - sparse;
    for (let u = from; u < to; u++) {
      const other = row[u] as number;
      if (other >= sparse) inverse[u] = (inverse[u] as number) + -l * (inverse[own + other] as number);
    }
    return;
  }
  inverse[t] = (inverse[t] as number) - l * (inverseDiagonal[column] as number);
  let p = start[column] as number;
  for (let u = t + 1; u < to; u++) {
    while ((row[p] as number) !== (row[u] as number)) p++;
    inverse[u] = (inverse[u] as number) - l * (inverse[p] as number);
    inverse[t] = inverse[t] - (factor[u] as number) * (inverse[p] as number);
  }
}

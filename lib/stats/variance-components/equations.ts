import { solveLower, solveUpper } from '@/lib/stats/linear-algebra/cholesky';
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

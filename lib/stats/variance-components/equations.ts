import {
  choleskyInPlace,
  inverseFromCholesky,
  solveLower,
  solveUpper,
} from '@/lib/stats/linear-algebra/cholesky';
import { addAt, at, codeAt } from '@/lib/stats/linear-algebra/element';
import { storeLength, type MixedModel } from './mixed-model';

/**
 * Henderson's mixed-model equations A v = c of a model on cells, relative to the residual variance:
 * A = Λ X' W X Λ + I on the random columns, W = diag(1 / (φ_cell + 1/n)), Λ = √φ for a random column and 1 for a
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
    const n = at(model.n, s);
    const w = cellRatio === 0 ? n : 1 / (cellRatio + 1 / n);
    weight[s] = w;
    total += w;
  }
  cross.fill(0);
  crossDiagonal.fill(0);
  for (const { column } of model.factors) {
    for (let s = 0; s < model.cells; s++) {
      const j = codeAt(column, s);
      if (j >= 0) addAt(crossDiagonal, j, at(weight, s));
    }
  }
  for (const { position } of model.pairs) {
    for (let s = 0; s < model.cells; s++) {
      const p = codeAt(position, s);
      if (p >= 0) addAt(cross, p, at(weight, s));
    }
  }
  crossDiagonal[model.columns - 1] = total;
  copyDiagonalToIntercept(equations);
}

/** Every cell has the intercept, so a column meets it as it meets itself. */
function copyDiagonalToIntercept({ model, cross, crossDiagonal }: Equations): void {
  for (let j = 0; j < model.sparse; j++) cross[codeAt(model.start, j + 1) - 1] = at(crossDiagonal, j);
  const size = model.columns - model.sparse;
  const last = model.row.length + (size - 1) * size;
  for (let i = 0; i < size - 1; i++) cross[last + i] = at(crossDiagonal, model.sparse + i);
}

export function setScale({ model, scale }: Equations, ratios: Float64Array): void {
  scale[model.columns - 1] = 1;
  for (const { component, first, width } of model.factors) {
    scale.fill(component < 0 ? 1 : Math.sqrt(at(ratios, component)), first, first + width);
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
    const own = at(scale, j);
    pivot[j] = own * own * at(crossDiagonal, j) + at(penalty, j);
    for (let t = codeAt(start, j); t < codeAt(start, j + 1); t++) {
      factor[t] = own * at(scale, codeAt(row, t)) * at(cross, t);
    }
  }
  for (let i = 0; i < size; i++) {
    const own = at(scale, sparse + i);
    for (let j = 0; j < i; j++) {
      dense[i * size + j] = own * at(scale, sparse + j) * at(cross, nonzeros + i * size + j);
    }
    dense[i * size + i] = own * own * at(crossDiagonal, sparse + i) + at(penalty, sparse + i);
  }
  let logDeterminant = 0;
  for (let j = 0; j < sparse; j++) {
    const a = at(pivot, j);
    const own = at(scale, j);
    if (!(a > least * (own * own * at(crossDiagonal, j) + at(penalty, j)))) return { dependent: j };
    logDeterminant += Math.log(a);
    eliminate(equations, j);
  }
  const bad = choleskyInPlace(dense, size, 0, least);
  if (bad >= 0) return { dependent: sparse + bad };
  for (let i = 0; i < size; i++) logDeterminant += 2 * Math.log(at(dense, i * size + i));
  return { logDeterminant };
}

/** Takes column j out: subtracts b b' / a from the columns it meets, and keeps b / a. */
function eliminate({ model, pivot, factor, dense }: Equations, j: number): void {
  const { sparse, start, row } = model;
  const size = model.columns - sparse;
  const from = codeAt(start, j);
  const to = codeAt(start, j + 1);
  const a = at(pivot, j);
  for (let t = from; t < to; t++) {
    const target = codeAt(row, t);
    const l = at(factor, t) / a;
    if (l === 0) continue;
    if (target < sparse) {
      addAt(pivot, target, -l * at(factor, t));
      let p = codeAt(start, target);
      for (let u = t + 1; u < to; u++) {
        while (codeAt(row, p) !== codeAt(row, u)) p++;
        addAt(factor, p, -l * at(factor, u));
      }
    } else {
      for (let u = t; u < to; u++) {
        addAt(dense, (codeAt(row, u) - sparse) * size + (target - sparse), -l * at(factor, u));
      }
    }
  }
  for (let t = from; t < to; t++) factor[t] = at(factor, t) / a;
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
    const value = at(vector, j);
    if (value === 0) continue;
    for (let t = codeAt(start, j); t < codeAt(start, j + 1); t++) {
      addAt(vector, codeAt(row, t), -at(factor, t) * value);
    }
  }
  solveLower(dense, model.columns - sparse, vector, sparse);
}

/** From z = L⁻¹ c to A⁻¹ c, in place. */
export function backward({ model, factor, pivot, dense }: Equations, vector: Float64Array): void {
  const { sparse, start, row } = model;
  solveUpper(dense, model.columns - sparse, vector, sparse);
  for (let j = sparse - 1; j >= 0; j--) {
    let value = at(vector, j) / at(pivot, j);
    for (let t = codeAt(start, j); t < codeAt(start, j + 1); t++) {
      value -= at(factor, t) * at(vector, codeAt(row, t));
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
  for (let i = 0; i < size; i++) inverseDiagonal[sparse + i] = at(inverse, nonzeros + i * size + i);
  for (let j = sparse - 1; j >= 0; j--) {
    const from = codeAt(start, j);
    const to = codeAt(start, j + 1);
    inverse.fill(0, from, to);
    for (let t = from; t < to; t++) addInverseColumn(equations, t, from, to);
    let diagonal = 1 / at(pivot, j);
    for (let t = from; t < to; t++) diagonal -= at(factor, t) * at(inverse, t);
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
  const l = at(factor, t);
  const column = codeAt(row, t);
  if (column >= sparse) {
    const own = model.row.length + (column - sparse) * size - sparse;
    for (let u = from; u < to; u++) {
      const other = codeAt(row, u);
      if (other >= sparse) addAt(inverse, u, -l * at(inverse, own + other));
    }
    return;
  }
  addAt(inverse, t, -l * at(inverseDiagonal, column));
  let p = codeAt(start, column);
  for (let u = t + 1; u < to; u++) {
    while (codeAt(row, p) !== codeAt(row, u)) p++;
    addAt(inverse, u, -l * at(inverse, p));
    addAt(inverse, t, -at(factor, u) * at(inverse, p));
  }
}

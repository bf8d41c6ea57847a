import { addAt, at, codeAt } from '@/lib/stats/linear-algebra/element';
import { factorise, selectInverse, setScale, type Equations } from './equations';

/** Below this part of a level's information a variance counts as 0 where its trace is taken. */
const FLOOR = 1e-6;

/**
 * tr(Z' P Z) of every component, P relative to the residual variance, from the equations at `ratios`.
 *
 * A random factor of q levels has (q − Σ A⁻¹ll) / φ, which is 0/0 at φ = 0; there it is taken at a φ so small
 * that it changes the trace by a millionth. The cells have Σ w − w² h with h = x' A⁻¹ x.
 */
export function traces(equations: Equations, ratios: Float64Array): Float64Array {
  const { model } = equations;
  const result = new Float64Array(model.components);
  selectInverse(equations);
  const floored = ratios.slice();
  const low: number[] = [];
  for (const { component, first, width } of model.factors) {
    if (component < 0) continue;
    const floor = FLOOR / largest(equations.crossDiagonal, first, width);
    if (at(ratios, component) < floor) {
      floored[component] = floor;
      low.push(component);
    } else result[component] = factorTrace(equations, component, at(ratios, component));
  }
  if (model.cellComponent >= 0) result[model.cellComponent] = cellTrace(equations);
  if (low.length > 0) {
    setScale(equations, floored);
    factorise(equations);
    selectInverse(equations);
    for (const component of low)
      result[component] = factorTrace(equations, component, at(floored, component));
  }
  return result;
}

function factorTrace({ model, inverseDiagonal }: Equations, component: number, ratio: number): number {
  const factor = model.factors.find((candidate) => candidate.component === component);
  if (factor === undefined) return 0;
  let sum = 0;
  for (let j = factor.first; j < factor.first + factor.width; j++) sum += 1 - at(inverseDiagonal, j);
  return sum / ratio;
}

function cellTrace(equations: Equations): number {
  const { model, weight } = equations;
  const leverage = leverages(equations);
  let sum = 0;
  for (let s = 0; s < model.cells; s++) sum += at(weight, s) * (1 - at(weight, s) * at(leverage, s));
  return sum;
}

/** h = x' A⁻¹ x of every cell, x its row of X Λ. */
export function leverages(equations: Equations): Float64Array {
  const { model, inverse, inverseDiagonal, scale } = equations;
  const intercept = model.columns - 1;
  const h = new Float64Array(model.cells).fill(at(inverseDiagonal, intercept));
  const own = new Float64Array(model.columns);
  const size = model.columns - model.sparse;
  const lastRow = model.row.length + (size - 1) * size - model.sparse;
  for (let j = 0; j < intercept; j++) {
    const meets = j < model.sparse ? codeAt(model.start, j + 1) - 1 : lastRow + j;
    own[j] = at(scale, j) * (at(scale, j) * at(inverseDiagonal, j) + 2 * at(inverse, meets));
  }
  for (const { column } of model.factors) {
    for (let s = 0; s < model.cells; s++) {
      const j = codeAt(column, s);
      if (j >= 0) addAt(h, s, at(own, j));
    }
  }
  for (const { a, b, position } of model.pairs) {
    const one = model.factors[a];
    const other = model.factors[b];
    if (one === undefined || other === undefined) continue;
    for (let s = 0; s < model.cells; s++) {
      const p = codeAt(position, s);
      if (p < 0) continue;
      const product = at(scale, codeAt(one.column, s)) * at(scale, codeAt(other.column, s));
      addAt(h, s, 2 * product * at(inverse, p));
    }
  }
  return h;
}

function largest(values: Float64Array, first: number, width: number): number {
  let most = 0;
  for (let j = first; j < first + width; j++) most = Math.max(most, at(values, j));
  return most;
}

import { setScale, type Equations } from './equations';
import { factorise } from './factorise';
import { selectInverse } from './selected-inverse';

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
    if ((ratios[component] as number) < floor) {
      floored[component] = floor;
      low.push(component);
    } else result[component] = factorTrace(equations, component, ratios[component] as number);
  }
  if (model.cellComponent >= 0) result[model.cellComponent] = cellTrace(equations);
  if (low.length > 0) {
    setScale(equations, floored);
    factorise(equations);
    selectInverse(equations);
    for (const component of low)
      result[component] = factorTrace(equations, component, floored[component] as number);
  }
  return result;
}

function factorTrace({ model, inverseDiagonal }: Equations, component: number, ratio: number): number {
  const factor = model.factors.find((candidate) => candidate.component === component);
  if (factor === undefined) return 0;
  let sum = 0;
  for (let j = factor.first; j < factor.first + factor.width; j++) sum += 1 - (inverseDiagonal[j] as number);
  return sum / ratio;
}

function cellTrace(equations: Equations): number {
  const { model, weight } = equations;
  const leverage = leverages(equations);
  let sum = 0;
  for (let s = 0; s < model.cells; s++) {
    const w = weight[s] as number;
    sum += w * (1 - w * (leverage[s] as number));
  }
  return sum;
}

/** h = x' A⁻¹ x of every cell, x its row of X Λ; in `product`, which the next solution overwrites. */
export function leverages(equations: Equations): Float64Array {
  const { model, inverse, inverseDiagonal, scale, product: h } = equations;
  const intercept = model.columns - 1;
  h.fill(inverseDiagonal[intercept] as number);
  const own = new Float64Array(model.columns);
  const size = model.columns - model.sparse;
  const lastRow = model.row.length + (size - 1) * size - model.sparse;
  for (let j = 0; j < intercept; j++) {
    const meets = j < model.sparse ? (model.start[j + 1] as number) - 1 : lastRow + j;
    own[j] =
      (scale[j] as number) *
      ((scale[j] as number) * (inverseDiagonal[j] as number) + 2 * (inverse[meets] as number));
  }
  for (const { column } of model.factors) {
    for (let s = 0; s < model.cells; s++) {
      const j = column[s] as number;
      if (j >= 0) h[s] = (h[s] as number) + (own[j] as number);
    }
  }
  for (const { a, b, position } of model.pairs) {
    const one = model.factors[a];
    const other = model.factors[b];
    if (one === undefined || other === undefined) continue;
    // Λ is one value a factor.
    const twice = 2 * (scale[one.first] as number) * (scale[other.first] as number);
    if (twice === 0) continue;
    for (let s = 0; s < model.cells; s++) {
      const p = position[s] as number;
      if (p >= 0) h[s] = (h[s] as number) + twice * (inverse[p] as number);
    }
  }
  return h;
}

function largest(values: Float64Array, first: number, width: number): number {
  let most = 0;
  for (let j = first; j < first + width; j++) most = Math.max(most, values[j] as number);
  return most;
}

import { addAt, at, codeAt } from '@/lib/stats/linear-algebra/element';
import { assemble, backward, factorise, forward, setScale, type Equations } from './equations';

/** The fit at given ratios φ of the variances to the residual variance. */
export interface Solution {
  ratios: Float64Array;
  /** A⁻¹ c: effects divided by Λ. */
  v: Float64Array;
  /** W (mean − fitted), one a cell: the cell part of P y. */
  weighted: Float64Array;
  /** y' P y relative to the residual variance, the within-cell part included. */
  quadratic: number;
  /** ln |V| + ln |X' V⁻¹ X|, V relative to the residual variance. */
  logDeterminant: number;
}

export class DependentColumn extends Error {
  constructor(readonly column: number) {
    super('A fixed effect depends on others.');
  }
}

/** Solves the mixed-model equations at `ratios` and leaves their factor in `equations`. */
export function solve(equations: Equations, ratios: Float64Array): Solution {
  const { model } = equations;
  const cellRatio = model.cellComponent < 0 ? 0 : at(ratios, model.cellComponent);
  assemble(equations, cellRatio);
  setScale(equations, ratios);
  const factored = factorise(equations);
  if ('dependent' in factored) throw new DependentColumn(factored.dependent);
  const v = crossWithCells(equations, (s) => at(model.mean, s));
  forward(equations, v);
  backward(equations, v);
  const { weighted, squares } = residuals(equations, v);
  let quadratic = model.withinSs + squares;
  for (const { component, first, width } of model.factors) {
    if (component < 0) continue;
    for (let j = first; j < first + width; j++) quadratic += at(v, j) ** 2;
  }
  let logDeterminant = factored.logDeterminant;
  if (cellRatio > 0) {
    for (let s = 0; s < model.cells; s++) logDeterminant += Math.log1p(cellRatio * at(model.n, s));
  }
  return { ratios, v, weighted, quadratic, logDeterminant };
}

/** Λ X' W f for a value f of every cell. */
export function crossWithCells(equations: Equations, value: (cell: number) => number): Float64Array {
  const { model, weight, scale } = equations;
  const product = new Float64Array(model.cells);
  let total = 0;
  for (let s = 0; s < model.cells; s++) {
    const p = at(weight, s) * value(s);
    product[s] = p;
    total += p;
  }
  const result = new Float64Array(model.columns);
  for (const { column } of model.factors) {
    for (let s = 0; s < model.cells; s++) {
      const j = codeAt(column, s);
      if (j >= 0) addAt(result, j, at(product, s));
    }
  }
  result[model.columns - 1] = total;
  for (let j = 0; j < model.columns; j++) result[j] = at(result, j) * at(scale, j);
  return result;
}

function residuals(equations: Equations, v: Float64Array): { weighted: Float64Array; squares: number } {
  const { model, weight, scale } = equations;
  const weighted = new Float64Array(model.cells).fill(at(v, model.columns - 1));
  const effect = v.map((value, j) => value * at(scale, j));
  for (const { column } of model.factors) {
    for (let s = 0; s < model.cells; s++) {
      const j = codeAt(column, s);
      if (j >= 0) addAt(weighted, s, at(effect, j));
    }
  }
  let squares = 0;
  for (let s = 0; s < model.cells; s++) {
    const residual = at(model.mean, s) - at(weighted, s);
    const product = at(weight, s) * residual;
    weighted[s] = product;
    squares += product * residual;
  }
  return { weighted, squares };
}

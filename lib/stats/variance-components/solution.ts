import { assemble, backward, forward, setScale, type Equations } from './equations';
import { factorise } from './factorise';
import { sumByColumn } from './sum-by-column';

/** The fit at given ratios φ of the variances to the residual variance. */
export interface Solution {
  ratios: Float64Array;
  /** A⁻¹ c: effects divided by Λ. */
  v: Float64Array;
  /** W (mean − fitted), one a cell: the cell part of P y. Overwritten by the next solution. */
  weighted: Float64Array;
  /** y' P y relative to the residual variance, the within-cell part included. */
  quadratic: number;
  /** ln |V| + ln |X' V⁻¹ X|, V relative to the residual variance. */
  logDeterminant: number;
}

/** Solves the mixed-model equations at `ratios` and leaves their factor in `equations`. */
export function solve(equations: Equations, ratios: Float64Array): Solution {
  const { model, scale, weighted } = equations;
  const cellRatio = model.cellComponent < 0 ? 0 : (ratios[model.cellComponent] as number);
  assemble(equations, cellRatio);
  setScale(equations, ratios);
  const factored = factorise(equations);
  if ('dependent' in factored) {
    throw new RangeError('The fixed factors are confounded too nearly for their effects to be told apart.');
  }
  const v = weightedMeansByColumn(equations);
  for (let j = 0; j < model.columns; j++) v[j] = (v[j] as number) * (scale[j] as number);
  forward(equations, v);
  backward(equations, v);
  let quadratic = model.withinSs + fitCellResiduals(equations, v);
  for (const { component, first, width } of model.factors) {
    if (component < 0) continue;
    for (let j = first; j < first + width; j++) quadratic += (v[j] as number) ** 2;
  }
  const logDeterminant = factored.logDeterminant + logCells(equations, cellRatio);
  return { ratios, v, weighted, quadratic, logDeterminant };
}

/** Σ ln(1 + φ n): the determinant's share of the absorbed cell effects. */
function logCells({ model }: Equations, cellRatio: number): number {
  if (cellRatio === 0) return 0;
  let sum = 0;
  for (const [n, cells] of model.cellsBySize) sum += cells * Math.log1p(cellRatio * n);
  return sum;
}

function weightedMeansByColumn({ model, weight, product }: Equations): Float64Array {
  for (let s = 0; s < model.cells; s++) product[s] = (weight[s] as number) * (model.mean[s] as number);
  return sumByColumn(model, product);
}

/** Leaves W e in `weighted` and returns e' W e. */
function fitCellResiduals({ model, weight, scale, weighted }: Equations, v: Float64Array): number {
  const { cells, mean } = model;
  weighted.fill(v[model.columns - 1] as number);
  const effect = v.map((value, j) => value * (scale[j] as number));
  for (const { column } of model.factors) {
    for (let s = 0; s < cells; s++) {
      const j = column[s] as number;
      if (j >= 0) weighted[s] = (weighted[s] as number) + (effect[j] as number);
    }
  }
  let squares = 0;
  for (let s = 0; s < cells; s++) {
    const residual = (mean[s] as number) - (weighted[s] as number);
    const w = (weight[s] as number) * residual;
    weighted[s] = w;
    squares += w * residual;
  }
  return squares;
}

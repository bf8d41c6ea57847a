import { at, codeAt } from '@/lib/stats/linear-algebra/element';
import { criterion, evaluate } from './criterion';
import { newEquations } from './equations';
import { minimise, type Minimum, type Objective } from './minimise';
import type { MixedModel } from './mixed-model';

/** Below this part of the variance of the readings the residual variance counts as none. */
export const RESIDUAL_FLOOR = 1e-10;

/** The REML criterion of a model as a function of its variances (components, then residual). */
export function objectiveOf(model: MixedModel): Objective & { equations: ReturnType<typeof newEquations> } {
  const equations = newEquations(model);
  const lower = new Float64Array(model.components + 1);
  lower[model.components] = RESIDUAL_FLOOR;
  return {
    equations,
    value: (x) => criterion(equations, x),
    evaluate: (x) => evaluate(equations, x),
    lower,
    noise: (x) => 1e-12 + 1e-15 * (model.readings + largestRatio(x)),
  };
}

/** The equations lose digits as the components outgrow the residual. */
function largestRatio(x: Float64Array): number {
  return x.reduce((most, variance) => Math.max(most, variance), 0) / at(x, x.length - 1);
}

/** Models this small are fitted from several starts, since their criterion may have more than one minimum. */
export const isSmall = (model: MixedModel): boolean => model.cells + model.columns < 2000;

/** REML estimates: the lowest minimum of the criterion that the starts lead to. */
export function fitModel(model: MixedModel, objective: Objective): Minimum {
  let start = momentStart(model);
  if (isSmall(model)) {
    let best = Infinity;
    for (const candidate of [start, ...spreadStarts(model.components)]) {
      const found = minimise(objective, candidate, { enough: 1e-3 });
      if (found.value < best) {
        best = found.value;
        start = found.x;
      }
    }
  }
  return minimise(objective, start);
}

/** Rough moments: the variance of each factor's level means, less what the residual explains of it. */
function momentStart(model: MixedModel): Float64Array {
  const start = new Float64Array(model.components + 1);
  const df = model.readings - model.cells;
  const residual = df > 0 ? model.withinSs / df : 0.3;
  start[model.components] = Math.max(residual, 1e-4);
  for (const factor of model.factors) {
    if (factor.component < 0) continue;
    const count = new Float64Array(factor.width);
    const sum = new Float64Array(factor.width);
    for (let s = 0; s < model.cells; s++) {
      const j = codeAt(factor.column, s) - factor.first;
      count[j] = at(count, j) + 1;
      sum[j] = at(sum, j) + at(model.mean, s);
    }
    start[factor.component] = Math.max(0.02, varianceOfMeans(sum, count) / 2);
  }
  if (model.cellComponent >= 0) start[model.cellComponent] = 0.1;
  return start;
}

function varianceOfMeans(sum: Float64Array, count: Float64Array): number {
  let levels = 0;
  let total = 0;
  let squares = 0;
  for (let j = 0; j < sum.length; j++) {
    if (at(count, j) === 0) continue;
    const mean = at(sum, j) / at(count, j);
    levels++;
    total += mean;
    squares += mean * mean;
  }
  return levels > 1 ? (squares - (total * total) / levels) / (levels - 1) : 0;
}

/** Every component small, all alike, and each in turn the only large one. */
function spreadStarts(components: number): Float64Array[] {
  const even = new Float64Array(components + 1).fill(1 / (components + 1));
  const small = new Float64Array(components + 1).fill(0.02);
  small[components] = 1;
  const single = Array.from({ length: components }, (_, i) => {
    const start = new Float64Array(components + 1).fill(0.05);
    start[components] = 0.3;
    start[i] = 1;
    return start;
  });
  return [even, small, ...single];
}

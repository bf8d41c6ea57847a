import { at, codeAt } from '@/lib/stats/linear-algebra/element';
import { criterion, evaluate } from './criterion';
import { newEquations } from './equations';
import { minimise, type Minimum, type Objective } from './minimise';
import type { MixedModel, ModelFactor } from './mixed-model';

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
    noise: (x) => 1e-12 + 3e-15 * (model.readings + largestRatio(x)),
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

/** Rough moments: the variance of each factor's level means, less what the scatter within levels explains of it. */
function momentStart(model: MixedModel): Float64Array {
  const start = new Float64Array(model.components + 1);
  const df = model.readings - model.cells;
  let within = 1;
  let others = 0;
  for (const factor of model.factors) {
    if (factor.component < 0) continue;
    const spread = spreadOf(factor, model);
    start[factor.component] = Math.max(0.01, spread.between - spread.within * spread.share);
    if (spread.within < within) {
      within = spread.within;
      others = -at(start, factor.component);
    }
  }
  for (let i = 0; i < model.components; i++) others += at(start, i);
  const residual = df > 0 ? model.withinSs / df : Math.max(within - others, within / 4);
  start[model.components] = Math.max(residual, 1e-4);
  if (model.cellComponent >= 0)
    start[model.cellComponent] = Math.max(0.05 * within, within - others - residual, 0.001);
  return start;
}

interface Spread {
  /** Variance of the level means, and of the cell means within levels. */
  between: number;
  within: number;
  /** Mean of 1 / (cells in a level): what of `within` shows in the level means. */
  share: number;
}

function spreadOf(factor: ModelFactor, model: MixedModel): Spread {
  const count = new Float64Array(factor.width);
  const sum = new Float64Array(factor.width);
  let squares = 0;
  for (let s = 0; s < model.cells; s++) {
    const j = codeAt(factor.column, s) - factor.first;
    const value = at(model.mean, s);
    count[j] = at(count, j) + 1;
    sum[j] = at(sum, j) + value;
    squares += value * value;
  }
  let [total, ofMeans, explained, share] = [0, 0, 0, 0];
  for (let j = 0; j < factor.width; j++) {
    const mean = at(sum, j) / at(count, j);
    total += mean;
    ofMeans += mean * mean;
    explained += mean * at(sum, j);
    share += 1 / at(count, j) / factor.width;
  }
  const free = model.cells - factor.width;
  return {
    between: (ofMeans - (total * total) / factor.width) / Math.max(1, factor.width - 1),
    within: free > 0 ? Math.max(0, squares - explained) / free : 0,
    share,
  };
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

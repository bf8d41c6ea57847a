import {
  componentAt,
  type Explanation,
  innovation,
  patternAt,
  patternProbability,
  putBody,
} from '../cause/explanation';
import type { PairModel, RoundModel } from '../cause/model';
import { emptyExplanation, open } from '../cause/opening-state';
import { classesGiven, heightParts } from '../cause/outcomes';
import { bodyAt, damagedAt } from './faults';

const LOG_2PI = Math.log(2 * Math.PI);

/** ln of what one explanation weighs, taken apart: the prior, then one term for each piece of evidence. */
export interface Chain {
  prior: number;
  /** By step of the model: the left reading, then the right one given the left; 0 where there is none. */
  heights: [number, number][];
  /** By length of the model. */
  lengths: number[];
  /** What re-checks that were recorded make of it. */
  rechecks: number;
}

/**
 * Takes the weight of an explanation apart by the chain rule: ln p(y₁) + ln p(y₂ | y₁) + …, the setups in the
 * order in which they were hung. The terms sum to the ln of prior times exact marginal likelihood that the
 * search has found.
 */
export function chainOf(model: RoundModel, item: Explanation): Chain {
  const state = stateBefore(model, item);
  const heights = model.steps.map((): [number, number] => [0, 0]);
  for (const step of hungOrder(model)) {
    const pair = model.steps[step];
    if (pair) heights[step] = condition(state, pair, item.settings[step] ?? 0);
  }
  return {
    prior: priorOf(model, item),
    heights,
    lengths: model.lengths.map(({ ends, damaged, sound }) =>
      ends.some(([station, side]) => damagedAt(model, item, station, side)) ? damaged : sound,
    ),
    rechecks: heightParts(model)
      .filter((height) => height.pair.cause[height.side] !== null)
      .reduce((sum, height) => sum + Math.log(classesGiven(height, height.parts(item)).likelihood), 0),
  };
}

/** Steps of the model in the order in which their gauges were hung. */
export const hungOrder = (model: RoundModel): number[] =>
  model.steps
    .map((_, step) => step)
    .sort((a, b) => (model.steps[a]?.pair.setup ?? 0) - (model.steps[b]?.pair.setup ?? 0));

function priorOf(model: RoundModel, item: Explanation): number {
  const bodies = model.frame.stations.map((_, g) => componentAt(model.bodies, item.bodies[g] ?? 0));
  let impacts = 0;
  model.shares.forEach((share, c) => {
    impacts += bodies.reduce(
      (product, _, g) => product * patternProbability(model, c, g, patternAt(model, item, g)),
      share,
    );
  });
  let prior = Math.log(impacts);
  for (const body of bodies) prior += body.logPrior;
  model.zeros.forEach((zero, k) => {
    prior += componentAt(zero.settings, item.zeroSettings[k] ?? 0).logPrior;
  });
  model.steps.forEach((pair, step) => {
    prior += componentAt(pair.settings, item.settings[step] ?? 0).logPrior;
  });
  return prior;
}

/** The state that an explanation leads to expect before any height is read. */
function stateBefore(model: RoundModel, item: Explanation): Explanation {
  const state = emptyExplanation(model);
  open(model, item, state);
  for (let g = 2; g < model.frame.stations.length; g++) {
    const body = componentAt(model.bodies, item.bodies[g] ?? 0);
    putBody(state, bodyAt(model, g), body);
  }
  return state;
}

/** ln densities of a setup's two readings given all before, and the state conditioned on them. */
function condition(state: Explanation, pair: PairModel, index: number): [number, number] {
  const n = state.mean.length;
  const rows = new Float64Array(2 * n);
  const found = innovation(state, pair, componentAt(pair.settings, index), rows);
  const { left: rL, right: rR, varLeft: vL, varRight: vR, covariance: c } = found;
  if (!pair.hasLeft) {
    update(state, rows.subarray(n), rR, vR);
    return [0, logNormal(rR, vR)];
  }
  const left = logNormal(rL, vL);
  // Before the left reading changes the state: what it says of the right one.
  const gain = c / vL;
  const rest = rows.slice(n).map((value, i) => value - gain * (rows[i] ?? 0));
  update(state, rows.subarray(0, n), rL, vL);
  if (!pair.hasRight) return [left, 0];
  const residual = rR - gain * rL;
  const variance = vR - gain * c;
  update(state, rest, residual, variance);
  return [left, logNormal(residual, variance)];
}

const logNormal = (residual: number, variance: number): number =>
  -0.5 * (LOG_2PI + Math.log(variance) + residual ** 2 / variance);

/** Conditions the state on one value: `row` is its covariance with the state, `residual` what it is off by. */
function update(state: Explanation, row: Float64Array, residual: number, variance: number): void {
  const { mean, covariance } = state;
  const n = mean.length;
  for (let i = 0; i < n; i++) {
    const k = (row[i] ?? 0) / variance;
    if (k === 0) continue;
    mean[i] = (mean[i] ?? 0) + k * residual;
    for (let j = 0; j < n; j++) covariance[i * n + j] = (covariance[i * n + j] ?? 0) - k * (row[j] ?? 0);
  }
}

import type { Component } from './components';
import type { PairModel, RoundModel } from './model';

/** One explanation of a whole round: what every setting and every station is taken to be, and what follows. */
export interface Explanation {
  /** ln of prior times evidence so far. */
  logWeight: number;
  mean: Float64Array;
  covariance: Float64Array;
  /** P(impact class | this explanation so far). */
  impacts: Float64Array;
  /** Index into `model.bodies` by station. */
  bodies: Int16Array;
  /** Index into the zero setup's settings, by zero setup. */
  zeroSettings: Int16Array;
  /** Index into the pair's settings, by step. */
  settings: Int16Array;
}

/** What is known of a round's state under an explanation, mm and mm². */
export type State = Pick<Explanation, 'mean' | 'covariance'>;

export const componentAt = (list: readonly Component[], index: number): Component => {
  const found = list[index];
  if (!found) throw new RangeError(`There is no hypothesis ${index} among ${list.length}.`);
  return found;
};

export const patternAt = (model: RoundModel, item: Explanation, station: number): number =>
  componentAt(model.bodies, item.bodies[station] ?? 0).sides;

export const patternProbability = (
  model: RoundModel,
  impact: number,
  station: number,
  pattern: number,
): number => model.patterns[impact]?.[station]?.[pattern] ?? 0;

/**
 * Covariance of the first `met` entries of the state with the two readings of a pair, one row a side, written into
 * `rows` (2 × size).
 */
function observe(item: State, pair: PairModel, rows: Float64Array, met: number): void {
  const n = item.mean.length;
  const C = item.covariance;
  const [p, q] = pair.zeros;
  const [wa, wb] = pair.weights;
  for (let s = 0; s < 2; s++) {
    const b = (pair.body + s) * n;
    const e = (p + s) * n;
    const f = (q + s) * n;
    const out = s * n;
    for (let i = 0; i < met; i++)
      rows[out + i] = (C[b + i] ?? 0) - wa * (C[e + i] ?? 0) - wb * (C[f + i] ?? 0);
  }
}

/** A pair's readings against what the state leads to expect of them, with their covariance; `rows` as `observe` writes. */
export interface Innovation {
  left: number;
  right: number;
  varLeft: number;
  varRight: number;
  covariance: number;
}

/**
 * What a pair's two readings add, under one hypothesis about its setting. Writes `rows`, as far as stations are met
 * so far: all, unless `met` says how many entries of the state.
 */
export function innovation(
  item: State,
  pair: PairModel,
  setting: Component,
  rows: Float64Array,
  met = item.mean.length,
): Innovation {
  const n = item.mean.length;
  observe(item, pair, rows, met);
  return {
    left: pair.y[0] - setting.left - project(item.mean, 0, pair, 0),
    right: pair.y[1] - setting.right - project(item.mean, 0, pair, 1),
    varLeft: project(rows, 0, pair, 0) + pair.noise[0] + pair.commonNoise + setting.varLeft,
    varRight: project(rows, n, pair, 1) + pair.noise[1] + pair.commonNoise + setting.varRight,
    covariance: project(rows, 0, pair, 1) + pair.commonNoise + setting.covariance,
  };
}

/** Puts the hypothesis about a body that nothing was read of yet into the state, at `at` and after it. */
export function putBody({ mean, covariance }: State, at: number, body: Component): void {
  const n = mean.length;
  mean[at] = body.left;
  mean[at + 1] = body.right;
  covariance[at * n + at] = body.varLeft;
  covariance[(at + 1) * n + at + 1] = body.varRight;
  covariance[at * n + at + 1] = body.covariance;
  covariance[(at + 1) * n + at] = body.covariance;
}

/** The observation's own combination of a row: body less what the datum carries. */
function project(rows: Float64Array, offset: number, pair: PairModel, s: number): number {
  const at = offset + s;
  return (
    (rows[at + pair.body] ?? 0) -
    pair.weights[0] * (rows[at + pair.zeros[0]] ?? 0) -
    pair.weights[1] * (rows[at + pair.zeros[1]] ?? 0)
  );
}

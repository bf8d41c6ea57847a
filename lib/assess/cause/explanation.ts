import type { Component } from './components';
import { damages, type PairModel, type RoundModel } from './model';

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

/** Covariance of the state with the two readings of a pair, one row a side, written into `rows` (2 × size). */
export function observe(item: Explanation, pair: PairModel, rows: Float64Array): void {
  const n = item.mean.length;
  const C = item.covariance;
  const [p, q] = pair.zeros;
  const [wa, wb] = pair.weights;
  for (let s = 0; s < 2; s++) {
    const b = (pair.body + s) * n;
    const e = (p + s) * n;
    const f = (q + s) * n;
    const out = s * n;
    for (let i = 0; i < n; i++) rows[out + i] = (C[b + i] ?? 0) - wa * (C[e + i] ?? 0) - wb * (C[f + i] ?? 0);
  }
}

/** The observation's own combination of a row: body less what the datum carries. */
export function project(rows: Float64Array, offset: number, pair: PairModel, s: number): number {
  const at = offset + s;
  return (
    (rows[at + pair.body] ?? 0) -
    pair.weights[0] * (rows[at + pair.zeros[0]] ?? 0) -
    pair.weights[1] * (rows[at + pair.zeros[1]] ?? 0)
  );
}

/** ln of each pattern's probability at a station: the impact so far, and the lengths whose last end is here. */
export function patternWeights(
  model: RoundModel,
  item: Explanation,
  station: number,
  out: Float64Array,
): void {
  for (let pattern = 0; pattern < 4; pattern++) {
    let sum = 0;
    for (let c = 0; c < item.impacts.length; c++) {
      sum += (item.impacts[c] ?? 0) * patternProbability(model, c, station, pattern);
    }
    out[pattern] = Math.log(sum);
  }
  for (const length of model.lengths) {
    if (length.last !== station) continue;
    let elsewhere = false;
    let here = 0;
    for (const [end, side] of length.ends) {
      if (end === station) here |= side === 0 ? 1 : 2;
      else if (damages(patternAt(model, item, end), side)) elsewhere = true;
    }
    for (let pattern = 0; pattern < 4; pattern++) {
      out[pattern] =
        (out[pattern] ?? 0) + (elsewhere || (pattern & here) !== 0 ? length.damaged : length.sound);
    }
  }
}

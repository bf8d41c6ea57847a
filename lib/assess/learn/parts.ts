import type { Component } from '../cause/components';
import { componentAt, type Explanation } from '../cause/explanation';
import type { PairModel, RoundModel, ZeroModel } from '../cause/model';
import { pairSetting, type SettingMoments, zeroSetting } from '../cause/moments';
import { settingGain } from '../cause/setting-gain';
import type { RoundSlots } from './round-scores';

/**
 * One setting or one sound body of a round under an explanation: left and right, as normal values that the readings
 * tell something of.
 */
export interface Part {
  /** Slots of its scatter, and of its hand's and its gauge's bias, in the round; −1 where it tells none. */
  scatter: number;
  hand: number;
  gauge: number;
  /** Inverse of its covariance before the readings, mm⁻². */
  iLL: number;
  iRR: number;
  iLR: number;
  /** What the readings take off its covariance, mm²: the covariance of what is expected of it. */
  LL: number;
  RR: number;
  LR: number;
  /** How it follows from the state: places, and their weights on the left and on the right. */
  at: number[];
  onLeft: number[];
  onRight: number[];
  /** Covariance of its left side with each place of the state, given the readings, mm², from `from` on; then its right's. */
  rows: Float64Array;
  from: number;
}

/** Those of all parts of an explanation, in room used again. */
let rows = new Float64Array(1024);

/** Whether a setting tells its hand's scatter: only one of known size does. */
export const tellsScatter = ({ band, width, misset }: Component): boolean =>
  band < 0 && width !== 'broad' && misset !== 'other-mark';

/** Stations that an explanation takes to be sound, whose scatter it tells: the hypothesis, and its place in the state. */
export function soundBodies(model: RoundModel, item: Explanation): { place: Component; at: number }[] {
  const found: { place: Component; at: number }[] = [];
  const look = (station: number, at: number): void => {
    const place = componentAt(model.bodies, item.bodies[station] ?? 0);
    if (place.pattern === 'none') found.push({ place, at });
  };
  look(0, 0);
  look(1, 2);
  for (const { first, station, body } of model.steps) if (first) look(station, body);
  return found;
}

/** Everything in a round that tells of a scatter or a bias, under one explanation; good until the next call. */
export function partsOf(model: RoundModel, item: Explanation, slots: RoundSlots): Part[] {
  const parts: Part[] = [];
  const most = 2 * item.mean.length * (model.zeros.length + model.steps.length + model.frame.stations.length);
  if (rows.length < most) rows = new Float64Array(2 * most);
  model.zeros.forEach((zero, k) => {
    const setting = componentAt(zero.settings, item.zeroSettings[k] ?? 0);
    if (tellsScatter(setting)) parts.push(zeroPart(item, parts.length, zero, setting, slots.zeros[k] ?? -1));
  });
  model.steps.forEach((pair, step) => {
    const setting = componentAt(pair.settings, item.settings[step] ?? 0);
    const { scatter, hand, gauge } = slots.steps[step] ?? NOWHERE;
    const of = { scatter: tellsScatter(setting) ? scatter : -1, hand, gauge };
    parts.push(pairPart(item, parts.length, pair, setting, of));
  });
  for (const { place, at } of soundBodies(model, item))
    parts.push(bodyPart(item, parts.length, at, place, slots.body));
  return parts;
}

type Slots = Pick<Part, 'scatter' | 'hand' | 'gauge'>;

const NOWHERE: Slots = { scatter: -1, hand: -1, gauge: -1 };

function zeroPart(
  item: Explanation,
  index: number,
  zero: ZeroModel,
  setting: Component,
  scatter: number,
): Part {
  const e = zero.error;
  const b = 2 * zero.station;
  const of = { scatter, hand: -1, gauge: -1 };
  return partOf(
    item,
    index,
    of,
    setting,
    zeroSetting(item, zero),
    [e, e + 1, b, b + 1],
    [1, 0, -1, 0],
    [0, 1, 0, -1],
  );
}

function pairPart(item: Explanation, index: number, pair: PairModel, setting: Component, of: Slots): Part {
  const [ll, lr, rl, rr] = settingGain(pair, setting).gain;
  const [wa, wb] = pair.weights;
  const [p, q] = pair.zeros;
  const b = pair.body;
  return partOf(
    item,
    index,
    of,
    setting,
    pairSetting(item, pair, setting),
    [b, b + 1, p, p + 1, q, q + 1],
    [-ll, -lr, ll * wa, lr * wa, ll * wb, lr * wb],
    [-rl, -rr, rl * wa, rr * wa, rl * wb, rr * wb],
  );
}

function bodyPart(item: Explanation, index: number, at: number, place: Component, scatter: number): Part {
  const n = item.mean.length;
  const known: SettingMoments = {
    left: 0,
    right: 0,
    varLeft: item.covariance[at * n + at] ?? 0,
    varRight: item.covariance[(at + 1) * n + at + 1] ?? 0,
    covariance: item.covariance[at * n + at + 1] ?? 0,
  };
  return partOf(item, index, { scatter, hand: -1, gauge: -1 }, place, known, [at, at + 1], [1, 0], [0, 1]);
}

function partOf(
  { mean, covariance }: Explanation,
  index: number,
  { scatter, hand, gauge }: Slots,
  before: Component,
  after: SettingMoments,
  at: number[],
  onLeft: number[],
  onRight: number[],
): Part {
  const n = mean.length;
  const { varLeft: vL, varRight: vR, covariance: c } = before;
  const det = vL * vR - c * c;
  const from = 2 * n * index;
  rows.fill(0, from, from + 2 * n);
  for (let k = 0; k < at.length; k++) {
    const row = (at[k] ?? 0) * n;
    const left = onLeft[k] ?? 0;
    const right = onRight[k] ?? 0;
    for (let i = 0; i < n; i++) {
      const value = covariance[row + i] ?? 0;
      rows[from + i] = (rows[from + i] ?? 0) + left * value;
      rows[from + n + i] = (rows[from + n + i] ?? 0) + right * value;
    }
  }
  return {
    scatter,
    hand,
    gauge,
    iLL: vR / det,
    iRR: vL / det,
    iLR: -c / det,
    LL: vL - after.varLeft,
    RR: vR - after.varRight,
    LR: c - after.covariance,
    at,
    onLeft,
    onRight,
    rows,
    from,
  };
}

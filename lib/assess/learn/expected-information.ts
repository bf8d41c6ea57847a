import type { Component } from '../cause/components';
import { componentAt, type Explanation } from '../cause/explanation';
import type { PairModel, RoundModel, ZeroModel } from '../cause/model';
import { pairSetting, type SettingMoments, zeroSetting } from '../cause/moments';
import { settingGain } from '../cause/setting-gain';
import type { RoundScores, RoundSlots } from './round-scores';

/**
 * One setting or one sound body of a round under an explanation: left and right, as normal values that the readings
 * tell something of.
 */
interface Part {
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
  /** Where in `rows` the covariance of its left side with each place of the state stands; the right's follows. */
  from: number;
}

/** Covariances of the parts' sides with the state, given the readings, mm²: side by side, in room used again. */
let rows = new Float64Array(1024);

/** Covariance of what is expected of two parts, mm²: left and right of the first in rows, of the second in columns. */
const shared = { LL: 0, LR: 0, RL: 0, RR: 0 };

/**
 * Adds what the model expects of the information in a round (Fisher's) on the scatters and the biases, were this its
 * explanation. For normal readings of covariance V it is ½ tr(V⁻¹ ∂V V⁻¹ ∂V) on what V depends on, and ∂μᵀ V⁻¹ ∂μ on
 * what their mean does (Searle, Casella & McCulloch, *Variance Components*, 1992; from memory, held to finite
 * differences). V is as large as the round, so it is worked out of the parts: Q ∂ V⁻¹ ∂ᵀ Q, with Q what they were
 * before the readings, is the covariance of what is expected of them.
 * @param weight of the explanation
 */
export function addExpectedInformation(
  model: RoundModel,
  explanation: Explanation,
  weight: number,
  slots: RoundSlots,
): void {
  const { scatters, biases } = slots;
  const parts = partsOf(model, explanation, slots);
  const n = explanation.mean.length;
  for (let i = 0; i < parts.length; i++) {
    const a = parts[i];
    if (!a) break;
    for (let j = 0; j <= i; j++) {
      const b = parts[j];
      if (!b) break;
      const ofScatters = a.scatter >= 0 && b.scatter >= 0;
      const ofBiases = a.hand >= 0 && b.hand >= 0;
      if (!ofScatters && !ofBiases) continue;
      if (i === j) shareItself(a);
      else share(a, b, n);
      if (ofScatters) {
        const value = 2 * weight * onScatters(a, b);
        scatters.expect(a.scatter, b.scatter, value);
        if (i !== j) scatters.expect(b.scatter, a.scatter, value);
      }
      if (!ofBiases) continue;
      const value = weight * onBiases(a, b);
      expectBiases(biases, a, b, value);
      if (i !== j) expectBiases(biases, b, a, value);
    }
  }
}

function expectBiases(biases: RoundScores, a: Part, b: Part, value: number): void {
  biases.expect(a.hand, b.hand, value);
  biases.expect(a.hand, b.gauge, value);
  biases.expect(a.gauge, b.hand, value);
  biases.expect(a.gauge, b.gauge, value);
}

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

function partsOf(model: RoundModel, item: Explanation, slots: RoundSlots): Part[] {
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
    from,
  };
}

/** Writes `shared` of a part with itself. */
function shareItself({ LL, RR, LR }: Part): void {
  shared.LL = LL;
  shared.RR = RR;
  shared.LR = LR;
  shared.RL = LR;
}

/** Writes `shared`. Two parts were independent before the readings, so all that they share is what these left. */
function share({ from }: Part, { at, onLeft, onRight }: Part, n: number): void {
  let LL = 0;
  let LR = 0;
  let RL = 0;
  let RR = 0;
  for (let k = 0; k < at.length; k++) {
    const place = from + (at[k] ?? 0);
    const left = rows[place] ?? 0;
    const right = rows[place + n] ?? 0;
    LL -= left * (onLeft[k] ?? 0);
    LR -= left * (onRight[k] ?? 0);
    RL -= right * (onLeft[k] ?? 0);
    RR -= right * (onRight[k] ?? 0);
  }
  shared.LL = LL;
  shared.LR = LR;
  shared.RL = RL;
  shared.RR = RR;
}

/** tr(Qa⁻¹ S Qb⁻¹ Sᵀ) with what is `shared`: half the information on the logarithms of two scatters. */
function onScatters(a: Part, b: Part): number {
  const { LL, LR, RL, RR } = shared;
  const aLL = a.iLL * LL + a.iLR * RL;
  const aLR = a.iLL * LR + a.iLR * RR;
  const aRL = a.iLR * LL + a.iRR * RL;
  const aRR = a.iLR * LR + a.iRR * RR;
  return (
    (aLL * b.iLL + aLR * b.iLR) * LL +
    (aLL * b.iLR + aLR * b.iRR) * LR +
    (aRL * b.iLL + aRR * b.iLR) * RL +
    (aRL * b.iLR + aRR * b.iRR) * RR
  );
}

/** 1ᵀ Qa⁻¹ S Qb⁻¹ 1 with what is `shared`: the information on two biases, each of which moves both sides alike. */
function onBiases(a: Part, b: Part): number {
  const { LL, LR, RL, RR } = shared;
  const bL = b.iLL + b.iLR;
  const bR = b.iLR + b.iRR;
  return (a.iLL + a.iLR) * (LL * bL + LR * bR) + (a.iLR + a.iRR) * (RL * bL + RR * bR);
}

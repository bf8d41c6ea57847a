import type { Component } from './components';
import type { Explanation } from './explanation';
import type { PairModel, ZeroModel } from './model';

/** Gauge part and body part of one height under one explanation: a bivariate normal, mm and mm². */
export interface Parts {
  gauge: number;
  body: number;
  varGauge: number;
  varBody: number;
  covariance: number;
}

/** A linear combination of the state: at most six entries. */
interface Combination {
  at: number[];
  weight: number[];
}

function moment(item: Explanation, p: Combination, q: Combination): number {
  const n = item.mean.length;
  let sum = 0;
  for (let i = 0; i < p.at.length; i++) {
    const row = (p.at[i] ?? 0) * n;
    const w = p.weight[i] ?? 0;
    for (let j = 0; j < q.at.length; j++) sum += w * (q.weight[j] ?? 0) * (item.covariance[row + (q.at[j] ?? 0)] ?? 0);
  }
  return sum;
}

function value(item: Explanation, p: Combination): number {
  let sum = 0;
  for (let i = 0; i < p.at.length; i++) sum += (p.weight[i] ?? 0) * (item.mean[p.at[i] ?? 0] ?? 0);
  return sum;
}

/**
 * What is left of a setting when the state is known: the reading's difference splits between the setting and
 * the noise in proportion to their covariances. Returns the gain (2 × 2, row-major) and what stays uncertain.
 */
export function settingGain(pair: PairModel, setting: Component): { gain: [number, number, number, number]; rest: [number, number, number] } {
  const { varLeft: cL, varRight: cR, covariance: cC } = setting;
  const vL = cL + pair.noise[0] + pair.commonNoise;
  const vR = cR + pair.noise[1] + pair.commonNoise;
  const c = cC + pair.commonNoise;
  if (pair.pair.n[0] === 0) return { gain: [0, cC / vR, 0, cR / vR], rest: [cL - (cC * cC) / vR, cR - (cR * cR) / vR, cC - (cC * cR) / vR] };
  if (pair.pair.n[1] === 0) return { gain: [cL / vL, 0, cC / vL, 0], rest: [cL - (cL * cL) / vL, cR - (cC * cC) / vL, cC - (cL * cC) / vL] };
  const det = vL * vR - c * c;
  const gLL = (cL * vR - cC * c) / det;
  const gLR = (cC * vL - cL * c) / det;
  const gRL = (cC * vR - cR * c) / det;
  const gRR = (cR * vL - cC * c) / det;
  return {
    gain: [gLL, gLR, gRL, gRR],
    rest: [cL - gLL * cL - gLR * cC, cR - gRL * cC - gRR * cR, cC - gLL * cC - gLR * cR],
  };
}

/** The setting of one hanger as a combination of the state, a constant, and what stays uncertain. */
export function settingOf(pair: PairModel, setting: Component, side: 0 | 1): { at: number[]; weight: number[]; constant: number; rest: number } {
  const { gain, rest } = settingGain(pair, setting);
  const own: [number, number] = side === 0 ? [gain[0], gain[1]] : [gain[2], gain[3]];
  const at: number[] = [];
  const weight: number[] = [];
  let constant = side === 0 ? setting.left : setting.right;
  for (const s of [0, 1] as const) {
    const k = own[s];
    if (k === 0) continue;
    constant += k * (pair.y[s] - (s === 0 ? setting.left : setting.right));
    at.push(pair.body + s, pair.zeros[0] + s, pair.zeros[1] + s);
    weight.push(-k, k * pair.weights[0], k * pair.weights[1]);
  }
  return { at, weight, constant, rest: side === 0 ? rest[0] : rest[1] };
}

/** The two parts of a height away from the zero stations. */
export function pairParts(item: Explanation, pair: PairModel, setting: Component, side: 0 | 1): Parts {
  const own = settingOf(pair, setting, side);
  const [wa, wb] = pair.weights;
  // Less the zero gauges' settings: their datum error without the body at the zero points.
  const gauge: Combination = {
    at: [...own.at, pair.zeros[0] + side, pair.zeros[1] + side, side, 2 + side],
    weight: [...own.weight, -wa, -wb, wa, wb],
  };
  const body: Combination = { at: [pair.body + side, side, 2 + side], weight: [1, -wa, -wb] };
  return {
    gauge: own.constant + value(item, gauge),
    body: value(item, body),
    varGauge: Math.max(0, own.rest + moment(item, gauge, gauge)),
    varBody: Math.max(0, moment(item, body, body)),
    covariance: moment(item, gauge, body),
  };
}

/** The two parts of a zero station: its own setting and its own body, which only other stations can show. */
export function zeroParts(item: Explanation, zero: ZeroModel, side: 0 | 1): Parts {
  const body: Combination = { at: [2 * zero.station + side], weight: [1] };
  const gauge: Combination = { at: [zero.error + side, 2 * zero.station + side], weight: [1, -1] };
  return {
    gauge: value(item, gauge),
    body: value(item, body),
    varGauge: Math.max(0, moment(item, gauge, gauge)),
    varBody: Math.max(0, moment(item, body, body)),
    covariance: moment(item, gauge, body),
  };
}

import type { Component } from './components';
import type { Explanation } from './explanation';
import type { PairModel } from './model';

/** A linear combination of the state: at most six entries. */
export interface Combination {
  at: number[];
  weight: number[];
}

export function moment(item: Explanation, p: Combination, q: Combination): number {
  const n = item.mean.length;
  let sum = 0;
  for (let i = 0; i < p.at.length; i++) {
    const row = (p.at[i] ?? 0) * n;
    const w = p.weight[i] ?? 0;
    for (let j = 0; j < q.at.length; j++)
      sum += w * (q.weight[j] ?? 0) * (item.covariance[row + (q.at[j] ?? 0)] ?? 0);
  }
  return sum;
}

export function value(item: Explanation, p: Combination): number {
  let sum = 0;
  for (let i = 0; i < p.at.length; i++) sum += (p.weight[i] ?? 0) * (item.mean[p.at[i] ?? 0] ?? 0);
  return sum;
}

/**
 * What is left of a setting when the state is known: the reading's difference splits between the setting and
 * the noise in proportion to their covariances. Returns the gain (2 × 2, row-major) and what stays uncertain.
 */
export function settingGain(pair: PairModel, setting: Component): Gain {
  let gain = pair.gains.get(setting);
  if (!gain) pair.gains.set(setting, (gain = gainOf(pair, setting)));
  return gain;
}

export interface Gain {
  gain: [number, number, number, number];
  rest: [number, number, number];
}

function gainOf(pair: PairModel, setting: Component): Gain {
  const { varLeft: cL, varRight: cR, covariance: cC } = setting;
  const vL = cL + pair.noise[0] + pair.commonNoise;
  const vR = cR + pair.noise[1] + pair.commonNoise;
  const c = cC + pair.commonNoise;
  if (pair.pair.n[0] === 0)
    return {
      gain: [0, cC / vR, 0, cR / vR],
      rest: [cL - (cC * cC) / vR, cR - (cR * cR) / vR, cC - (cC * cR) / vR],
    };
  if (pair.pair.n[1] === 0)
    return {
      gain: [cL / vL, 0, cC / vL, 0],
      rest: [cL - (cL * cL) / vL, cR - (cC * cC) / vL, cC - (cL * cC) / vL],
    };
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

export interface SettingCombination extends Combination {
  constant: number;
  /** Variance that stays when the state is known, and its covariance with the other hanger's, mm². */
  rest: number;
  restCross: number;
}

/** The setting of one hanger as a combination of the state, a constant, and what stays uncertain. */
export function settingOf(pair: PairModel, setting: Component, side: 0 | 1): SettingCombination {
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
  return { at, weight, constant, rest: side === 0 ? rest[0] : rest[1], restCross: rest[2] };
}

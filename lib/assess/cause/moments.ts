import { carried } from './carried';
import type { Component } from './components';
import type { Explanation } from './explanation';
import type { PairModel, ZeroModel } from './model';
import { settingGain } from './setting-gain';

/** Posterior mean and covariance of one setup's two settings under an explanation, mm and mm². */
export interface SettingMoments {
  left: number;
  right: number;
  varLeft: number;
  varRight: number;
  covariance: number;
}

/**
 * The settings of a setup away from the zero stations: each follows from what the two readings differ from the body
 * less what the datum errors carry there.
 */
export function pairSetting(item: Explanation, pair: PairModel, setting: Component): SettingMoments {
  const { mean, covariance: C } = item;
  const n = mean.length;
  const wa = pair.weights[0];
  const wb = pair.weights[1];
  const p = pair.zeros[0];
  const q = pair.zeros[1];
  const b = pair.body;
  const { gain, rest } = settingGain(pair, setting);
  const [ll, lr, rl, rr] = gain;
  const left = pair.y[0] - setting.left - (mean[b] ?? 0) + wa * (mean[p] ?? 0) + wb * (mean[q] ?? 0);
  const right =
    pair.y[1] - setting.right - (mean[b + 1] ?? 0) + wa * (mean[p + 1] ?? 0) + wb * (mean[q + 1] ?? 0);
  const vL = carried(C, n, b, p, q, b, p, q, wa, wb);
  const vR = carried(C, n, b + 1, p + 1, q + 1, b + 1, p + 1, q + 1, wa, wb);
  const c = carried(C, n, b, p, q, b + 1, p + 1, q + 1, wa, wb);
  return {
    left: setting.left + ll * left + lr * right,
    right: setting.right + rl * left + rr * right,
    varLeft: rest[0] + ll * ll * vL + 2 * ll * lr * c + lr * lr * vR,
    varRight: rest[1] + rl * rl * vL + 2 * rl * rr * c + rr * rr * vR,
    covariance: rest[2] + ll * rl * vL + (ll * rr + lr * rl) * c + lr * rr * vR,
  };
}

/** The settings of a zero setup: its datum error less the body at its station. */
export function zeroSetting({ mean, covariance: C }: Explanation, zero: ZeroModel): SettingMoments {
  const n = mean.length;
  const e = zero.error;
  const b = 2 * zero.station;
  const both = (i: number, j: number): number =>
    (C[(e + i) * n + e + j] ?? 0) -
    (C[(e + i) * n + b + j] ?? 0) -
    (C[(b + i) * n + e + j] ?? 0) +
    (C[(b + i) * n + b + j] ?? 0);
  return {
    left: (mean[e] ?? 0) - (mean[b] ?? 0),
    right: (mean[e + 1] ?? 0) - (mean[b + 1] ?? 0),
    varLeft: both(0, 0),
    varRight: both(1, 1),
    covariance: both(0, 1),
  };
}

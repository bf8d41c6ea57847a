import { settingGain } from './combination';
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

/** The gauge part as a combination of the state: at most eight entries, of which the last two are bodies at a and b. */
const at = new Int32Array(8);
const weight = new Float64Array(8);

/** The two parts of a height away from the zero stations. */
export function pairParts(item: Explanation, pair: PairModel, setting: Component, side: 0 | 1): Parts {
  const { mean, covariance } = item;
  const n = mean.length;
  const [wa, wb] = pair.weights;
  const [p, q] = pair.zeros;
  const { gain, rest } = settingGain(pair, setting);
  // The own setting is what the reading's difference leaves it; less the zero gauges' settings, which are their
  // datum error without the body at the zero points.
  let gauge = side === 0 ? setting.left : setting.right;
  for (const s of [0, 1] as const) {
    const k = gain[2 * side + s] ?? 0;
    const own = s === side ? 1 : 0;
    if (k !== 0) gauge += k * (pair.y[s] - (s === 0 ? setting.left : setting.right));
    const entry = 3 * s;
    at[entry] = pair.body + s;
    at[entry + 1] = p + s;
    at[entry + 2] = q + s;
    weight[entry] = -k;
    weight[entry + 1] = wa * (k - own);
    weight[entry + 2] = wb * (k - own);
  }
  at[6] = side;
  at[7] = 2 + side;
  weight[6] = wa;
  weight[7] = wb;
  const b = pair.body + side;
  let varGauge = 0;
  let cross = 0;
  for (let i = 0; i < 8; i++) {
    const w = weight[i] ?? 0;
    if (w === 0) continue;
    const entry = at[i] ?? 0;
    const row = entry * n;
    gauge += w * (mean[entry] ?? 0);
    let sum = 0.5 * w * (covariance[row + entry] ?? 0);
    for (let j = 0; j < i; j++) sum += (weight[j] ?? 0) * (covariance[row + (at[j] ?? 0)] ?? 0);
    varGauge += 2 * w * sum;
    cross +=
      w *
      ((covariance[row + b] ?? 0) -
        wa * (covariance[row + side] ?? 0) -
        wb * (covariance[row + 2 + side] ?? 0));
  }
  const a = side * n;
  const z = (2 + side) * n;
  return {
    gauge,
    body: (mean[b] ?? 0) - wa * (mean[side] ?? 0) - wb * (mean[2 + side] ?? 0),
    varGauge: Math.max(0, (side === 0 ? rest[0] : rest[1]) + varGauge),
    varBody: Math.max(
      0,
      (covariance[b * n + b] ?? 0) +
        wa * wa * (covariance[a + side] ?? 0) +
        wb * wb * (covariance[z + 2 + side] ?? 0) +
        2 * wa * wb * (covariance[a + 2 + side] ?? 0) -
        2 * (wa * (covariance[a + b] ?? 0) + wb * (covariance[z + b] ?? 0)),
    ),
    covariance: cross,
  };
}

/** The two parts of a zero station: its own setting and its own body, which only other stations can show. */
export function zeroParts(item: Explanation, zero: ZeroModel, side: 0 | 1): Parts {
  const { mean, covariance } = item;
  const n = mean.length;
  const e = zero.error + side;
  const b = 2 * zero.station + side;
  const errors = covariance[e * n + e] ?? 0;
  const bodies = covariance[b * n + b] ?? 0;
  const both = covariance[e * n + b] ?? 0;
  return {
    gauge: (mean[e] ?? 0) - (mean[b] ?? 0),
    body: mean[b] ?? 0,
    varGauge: Math.max(0, errors - 2 * both + bodies),
    varBody: Math.max(0, bodies),
    covariance: both - bodies,
  };
}

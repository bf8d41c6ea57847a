import { carried } from './carried';
import type { Component } from './components';
import type { Explanation } from './explanation';
import type { PairModel, ZeroModel } from './model';
import { settingGain } from './setting-gain';

/** Gauge part and body part of one height under one explanation: a bivariate normal, mm and mm². */
export interface Parts {
  gauge: number;
  body: number;
  varGauge: number;
  varBody: number;
  covariance: number;
}

/**
 * The two parts of a height away from the zero stations. The body part is B = the body here less what the bodies at the
 * zero stations carry here. A reading shows, but for setting and noise, D = the body here less what the datum errors
 * carry here; D − B is the zero gauges' settings. So the gauge part, own setting less these, is
 * constant + (1 − k) D − k' D' − B, where k and k' say how a setting follows from the readings of this side and the other.
 */
export function pairParts(item: Explanation, pair: PairModel, setting: Component, side: 0 | 1): Parts {
  const { mean, covariance: C } = item;
  const n = mean.length;
  const wa = pair.weights[0];
  const wb = pair.weights[1];
  const p = pair.zeros[0];
  const q = pair.zeros[1];
  const { gain, rest } = settingGain(pair, setting);
  const other = 1 - side;
  const own = side === 0 ? gain[0] : gain[3];
  const across = side === 0 ? gain[1] : gain[2];
  const at = pair.body + side;
  const beside = pair.body + other;
  const shown = (mean[at] ?? 0) - wa * (mean[p + side] ?? 0) - wb * (mean[q + side] ?? 0);
  const body = (mean[at] ?? 0) - wa * (mean[side] ?? 0) - wb * (mean[2 + side] ?? 0);
  const set = side === 0 ? setting.left : setting.right;
  let gauge = set + own * ((side === 0 ? pair.y[0] : pair.y[1]) - set - shown) + shown - body;
  const varShown = carried(C, n, at, p + side, q + side, at, p + side, q + side, wa, wb);
  const varBody = carried(C, n, at, side, 2 + side, at, side, 2 + side, wa, wb);
  const crossBody = carried(C, n, at, p + side, q + side, at, side, 2 + side, wa, wb);
  const left = 1 - own;
  let varGauge = left * left * varShown - 2 * left * crossBody + varBody;
  let covariance = left * crossBody - varBody;
  if (across !== 0) {
    const beyond = (mean[beside] ?? 0) - wa * (mean[p + other] ?? 0) - wb * (mean[q + other] ?? 0);
    const otherSet = side === 0 ? setting.right : setting.left;
    gauge += across * ((side === 0 ? pair.y[1] : pair.y[0]) - otherSet - beyond);
    const varOther = carried(C, n, beside, p + other, q + other, beside, p + other, q + other, wa, wb);
    const crossOther = carried(C, n, beside, p + other, q + other, at, p + side, q + side, wa, wb);
    const bodyOther = carried(C, n, beside, p + other, q + other, at, side, 2 + side, wa, wb);
    varGauge += across * (across * varOther - 2 * left * crossOther + 2 * bodyOther);
    covariance -= across * bodyOther;
  }
  return {
    gauge,
    body,
    varGauge: Math.max(0, (side === 0 ? rest[0] : rest[1]) + varGauge),
    varBody: Math.max(0, varBody),
    covariance,
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

import { type Combination, moment, settingOf, value } from './combination';
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

import { type Combination, moment, settingOf, value } from './combination';
import type { Component } from './components';
import type { Explanation } from './explanation';
import type { PairModel, ZeroModel } from './model';

/** Posterior mean and covariance of one setup's two settings under an explanation, mm and mm². */
export interface SettingMoments {
  left: number;
  right: number;
  varLeft: number;
  varRight: number;
  covariance: number;
}

/** The settings of a setup away from the zero stations. */
export function pairSetting(item: Explanation, pair: PairModel, setting: Component): SettingMoments {
  const left = settingOf(pair, setting, 0);
  const right = settingOf(pair, setting, 1);
  return {
    left: left.constant + value(item, left),
    right: right.constant + value(item, right),
    varLeft: left.rest + moment(item, left, left),
    varRight: right.rest + moment(item, right, right),
    covariance: left.restCross + moment(item, left, right),
  };
}

/** The settings of a zero setup: its datum error less the body at its station. */
export function zeroSetting(item: Explanation, zero: ZeroModel): SettingMoments {
  const of = (side: 0 | 1): Combination => ({
    at: [zero.error + side, 2 * zero.station + side],
    weight: [1, -1],
  });
  const left = of(0);
  const right = of(1);
  return {
    left: value(item, left),
    right: value(item, right),
    varLeft: moment(item, left, left),
    varRight: moment(item, right, right),
    covariance: moment(item, left, right),
  };
}

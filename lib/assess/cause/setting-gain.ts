import type { Component } from './components';
import type { PairModel } from './model';

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

import { withSums } from './gauge-figures';
import {
  combinations,
  combinationsWithoutInteraction,
  estimateOf,
  type Combination,
  type TrialSize,
} from './mean-squares';
import { mlsDifference, mlsSum } from './modified-large-sample';
import { satterthwaiteInterval } from './satterthwaite';
import type { CrossedIntervals, MlsInterval, SatterthwaiteInterval, Table, Variances } from './types';

export interface AnovaSide {
  variances: Variances;
  truncated: Variances;
  satterthwaite: NonNullable<CrossedIntervals['satterthwaite']>;
  modifiedLargeSample: NonNullable<CrossedIntervals['modifiedLargeSample']>;
}

const NO_INTERVAL: SatterthwaiteInterval = { df: null, low: null, high: null };
const NO_LIMITS: MlsInterval = { low: null, high: null, lowTruncated: null, highTruncated: null };

/** Components and intervals by the method of moments; without the interaction where it is pooled or not to be had. */
export function anovaSide(table: Table, size: TrialSize, interaction: boolean, level: number): AnovaSide {
  const all = interaction
    ? combinations(table, size)
    : { ...combinationsWithoutInteraction(table, size), 'part:operator': null };
  const both = all['part:operator'];
  const variances: Variances = {
    part: estimateOf(all.part),
    operator: estimateOf(all.operator),
    'part:operator': both === null ? null : estimateOf(both),
    repeat: estimateOf(all.repeat),
    reproducibility: estimateOf(all.reproducibility),
    gauge: estimateOf(all.gauge),
    total: estimateOf(all.total),
  };
  const satterthwaite = (combination: Combination) => satterthwaiteInterval(combination, level);
  const sum = (combination: Combination) => mlsSum(combination, level);
  const difference = ([a, b]: Combination) =>
    a === undefined || b === undefined ? NO_LIMITS : mlsDifference(a, b, level);
  const repeat = satterthwaite(all.repeat);
  return {
    variances,
    truncated: withSums({
      part: Math.max(0, variances.part ?? 0),
      operator: Math.max(0, variances.operator ?? 0),
      'part:operator': both === null ? null : Math.max(0, estimateOf(both)),
      repeat: variances.repeat,
    }),
    satterthwaite: {
      part: satterthwaite(all.part),
      operator: satterthwaite(all.operator),
      'part:operator': both === null ? NO_INTERVAL : satterthwaite(both),
      repeat,
      reproducibility: satterthwaite(all.reproducibility),
      gauge: satterthwaite(all.gauge),
      total: satterthwaite(all.total),
    },
    modifiedLargeSample: {
      part: difference(all.part),
      operator: difference(all.operator),
      'part:operator': both === null ? NO_LIMITS : difference(both),
      // A single mean square has its exact interval.
      repeat: { low: repeat.low, high: repeat.high, lowTruncated: repeat.low, highTruncated: repeat.high },
      gauge: sum(all.gauge),
      total: sum(all.total),
    },
  };
}

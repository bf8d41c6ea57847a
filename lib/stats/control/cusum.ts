import { requireAllFinite, requireFinite, requirePositive } from '@/lib/stats/arguments';
import { averageRunLength } from './average-run-length';
import { cusumLimitFor } from './design-limits';

export interface CusumOptions {
  /** The mean and the sd of one observation while all is well, from a period of reference. */
  center: number;
  sd: number;
  /** Allowance in sds: half the shift that should be found soonest. Default 0.5. */
  k?: number;
  /** Decision limit in sds; designed from `runLength` where absent. */
  h?: number;
  /** Average run length between false alarms that h is designed for. Default 370. */
  runLength?: number;
  /** Where both sums start, in sds, 0 … h. Default 0. */
  headStart?: number;
}

export interface CusumAlarm {
  /** Place of the observation, from 0. */
  at: number;
  side: 'upper' | 'lower';
  /** Place of the first observation after the sum last stood at zero: the likely start of the shift. */
  since: number;
}

export interface CusumChart {
  /** Both sums after each observation, in sds. */
  upper: number[];
  lower: number[];
  k: number;
  h: number;
  /** Average run length between false alarms with these limits. */
  runLength: number;
  /** Every observation at which a sum lies above h; the sums are not reset. */
  alarms: CusumAlarm[];
}

/**
 * Two-sided tabular CUSUM of standardised observations x = (value − center)/sd:
 * Uₜ = max(0, Uₜ₋₁ + xₜ − k), Dₜ = max(0, Dₜ₋₁ − xₜ − k), alarm where one exceeds h.
 *
 * RangeError for values that are not finite, an sd not above zero, or limits out of their range.
 * Source: NIST/SEMATECH e-Handbook, 6.3.2.3; head start after Lucas and Crosier (1982).
 */
export function cusum(values: readonly number[], options: CusumOptions): CusumChart {
  const { center, sd, k = 0.5, runLength: wanted = 370, headStart = 0 } = options;
  requireAllFinite('The values of a chart', values);
  requireFinite('The center of a chart', center);
  requirePositive('The standard deviation of a chart', sd);
  const h = options.h ?? cusumLimitFor(k, wanted);
  const runLength = averageRunLength({ chart: 'cusum', k, h, headStart });

  const chart: CusumChart = { upper: [], lower: [], k, h, runLength, alarms: [] };
  const sums = { upper: headStart, lower: headStart };
  const since = { upper: 0, lower: 0 };
  values.forEach((value, at) => {
    const x = (value - center) / sd;
    for (const side of ['upper', 'lower'] as const) {
      sums[side] = Math.max(0, sums[side] + (side === 'upper' ? x : -x) - k);
      if (sums[side] === 0) since[side] = at + 1;
      chart[side].push(sums[side]);
      if (sums[side] > h) chart.alarms.push({ at, side, since: since[side] });
    }
  });
  return chart;
}

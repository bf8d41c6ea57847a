import { requireAllFinite, requireFinite, requirePositive } from '@/lib/stats/arguments';
import { averageRunLength } from './average-run-length';
import { ewmaLimitFor } from './design-limits';

export interface EwmaOptions {
  /** The mean and the sd of one observation while all is well, from a period of reference. */
  center: number;
  sd: number;
  /** Weight of the newest observation, 0 < λ ≤ 1. Default 0.2. */
  lambda?: number;
  /** Half width of the limits in sds of the statistic; designed from `runLength` where absent. */
  L?: number;
  /** Average run length between false alarms that L is designed for. Default 370. */
  runLength?: number;
  /** `asymptotic` (default; what the run length holds for) or `exact`, narrower at the start. */
  limits?: 'asymptotic' | 'exact';
}

export interface EwmaChart {
  /** zₜ, one an observation, in the unit of the values. */
  statistic: number[];
  low: number[];
  high: number[];
  center: number;
  lambda: number;
  L: number;
  /** Average run length between false alarms with these limits (asymptotic). */
  runLength: number;
  /** Places of the observations, from 0, whose statistic lies outside the limits. */
  alarms: number[];
}

/**
 * Exponentially weighted moving average chart: zₜ = λ xₜ + (1 − λ) zₜ₋₁ with z₀ the center, and limits
 * center ± L sd √(λ/(2 − λ) · (1 − (1 − λ)²ᵗ)), without the last factor where `limits` is asymptotic.
 *
 * RangeError for values that are not finite, an sd not above zero, or λ outside 0 … 1.
 * Source: NIST/SEMATECH e-Handbook, 6.3.2.4; Lucas and Saccucci (1990), Technometrics 32, 1–12.
 */
export function ewma(values: readonly number[], options: EwmaOptions): EwmaChart {
  const { center, sd, lambda = 0.2, runLength: wanted = 370, limits = 'asymptotic' } = options;
  requireAllFinite('The values of a chart', values);
  requireFinite('The center of a chart', center);
  requirePositive('The standard deviation of a chart', sd);
  const L = options.L ?? ewmaLimitFor(lambda, wanted);
  const runLength = averageRunLength({ chart: 'ewma', lambda, L });

  const chart: EwmaChart = { statistic: [], low: [], high: [], center, lambda, L, runLength, alarms: [] };
  const widest = L * sd * Math.sqrt(lambda / (2 - lambda));
  let deviation = 0;
  values.forEach((value, i) => {
    deviation = lambda * (value - center) + (1 - lambda) * deviation;
    const grown = limits === 'exact' ? Math.sqrt(1 - (1 - lambda) ** (2 * (i + 1))) : 1;
    chart.statistic.push(center + deviation);
    chart.low.push(center - widest * grown);
    chart.high.push(center + widest * grown);
    if (Math.abs(deviation) > widest * grown) chart.alarms.push(i);
  });
  return chart;
}

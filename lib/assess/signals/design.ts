import { cusumLimitFor, ewmaLimitFor } from '@/lib/stats';
import type { Design, Series } from './types';

export interface SignalOptions {
  /** Periods between false alarms of the whole list, on average. Default 24: with months, one in two years. */
  falseAlarmPeriods?: number;
  /** An alarm counts as 'now' where it stood in one of this many last periods. Default 3. */
  recent?: number;
  /** Weight of the newest period in the EWMA; allowance of the CUSUM in sds of a period. */
  lambda?: number;
  k?: number;
}

/**
 * Limits for all charts together. With m series and two charts for each, a chart that gives a false alarm every
 * 2 m × `falseAlarmPeriods` periods makes the list give one every `falseAlarmPeriods` at most: rates of rare alarms add.
 */
export function designOf(
  series: readonly Series[],
  options: SignalOptions,
): Design & { ewmaLimit: number; cusumLimit: number } {
  const { falseAlarmPeriods = 24, lambda = 0.2, k = 0.5 } = options;
  if (!(falseAlarmPeriods >= 2)) {
    throw new RangeError(
      `False alarms can be had every two periods at most, not every ${falseAlarmPeriods}.`,
    );
  }
  const charts = 2 * Math.max(1, series.length);
  const runLength = falseAlarmPeriods * charts;
  return {
    falseAlarmPeriods,
    charts,
    runLength,
    lambda,
    k,
    falseAlarmJobs: jobsIn(series, falseAlarmPeriods),
    ...limitsFor(lambda, k, runLength),
    method:
      `EWMA (λ = ${lambda}) and two-sided CUSUM (k = ${k}) of each period’s score against all periods before it. Each of ` +
      `the ${charts} charts is designed for one false alarm in ${Math.round(runLength)} periods, so the whole list ` +
      `gives one in ${falseAlarmPeriods} periods where nothing changes.`,
  };
}

const known = new Map<string, { ewmaLimit: number; cusumLimit: number }>();

/** Kept, since finding a limit takes a tenth of a second and a shop asks for the same ones again and again. */
function limitsFor(lambda: number, k: number, runLength: number) {
  const key = `${lambda} ${k} ${runLength}`;
  const found = known.get(key) ?? {
    ewmaLimit: ewmaLimitFor(lambda, runLength) * Math.sqrt(lambda / (2 - lambda)),
    cusumLimit: cusumLimitFor(k, runLength),
  };
  known.set(key, found);
  return found;
}

/** Jobs of the shop in so many periods; null without a series of the shop's rate. */
function jobsIn(series: readonly Series[], periods: number): number | null {
  for (const one of series) {
    if (one.what !== 'right-first-time' || one.subject.kind !== 'shop' || one.periods.length === 0) continue;
    return Math.round((periods * one.periods.reduce((sum, { jobs }) => sum + jobs, 0)) / one.periods.length);
  }
  return null;
}

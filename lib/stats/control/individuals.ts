import { requireAllFinite } from '@/lib/stats/arguments';

/** E(range) of two standard normal values, 2/√π. */
const D2 = 2 / Math.sqrt(Math.PI);
/** 1 + 3 d3/d2 for ranges of two: √(π/2 − 1) is d3/d2. */
const D4 = 1 + 3 * Math.sqrt(Math.PI / 2 - 1);

export interface IndividualsChart {
  /** Mean of the values; null where there are none. */
  center: number | null;
  /** Short-term sd: mean moving range / d2(2). Null for fewer than two values. */
  sd: number | null;
  low: number | null;
  high: number | null;
  /** |xₜ − xₜ₋₁|, one fewer than values. */
  movingRanges: number[];
  meanMovingRange: number | null;
  movingRangeHigh: number | null;
  /** Places, from 0, of values outside center ± 3 sd, and of values whose moving range is too large. */
  alarms: number[];
  movingRangeAlarms: number[];
  why: string | null;
}

/**
 * Individuals and moving-range chart: center ± 3 (mean moving range)/d2, moving ranges up to D4 × their mean.
 * RangeError for values that are not finite. Source: NIST/SEMATECH e-Handbook, 6.3.2.2; ISO 7870-2.
 */
export function individuals(values: readonly number[]): IndividualsChart {
  requireAllFinite('The values of a chart', values);
  const n = values.length;
  const [origin = 0] = values;
  const center = n === 0 ? null : origin + values.reduce((sum, value) => sum + (value - origin), 0) / n;
  const movingRanges = values.slice(1).map((value, i) => Math.abs(value - (values[i] ?? NaN)));
  if (center === null || n < 2) {
    const none = { sd: null, low: null, high: null, meanMovingRange: null, movingRangeHigh: null };
    const why = 'A moving range needs two values.';
    return { center, ...none, movingRanges, alarms: [], movingRangeAlarms: [], why };
  }
  const meanMovingRange = movingRanges.reduce((sum, range) => sum + range, 0) / movingRanges.length;
  const sd = meanMovingRange / D2;
  const low = center - 3 * sd;
  const high = center + 3 * sd;
  const movingRangeHigh = D4 * meanMovingRange;
  return {
    center,
    sd,
    low,
    high,
    movingRanges,
    meanMovingRange,
    movingRangeHigh,
    alarms: values.flatMap((value, i) => (value < low || value > high ? [i] : [])),
    movingRangeAlarms: movingRanges.flatMap((range, i) => (range > movingRangeHigh ? [i + 1] : [])),
    why: null,
  };
}

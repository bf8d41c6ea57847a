import { requireLevel, requireNotNegative } from '@/lib/stats/arguments';
import { chiSquareQuantile, chiSquareUpperQuantile } from '@/lib/stats/distributions';
import { remembering } from '@/lib/stats/numeric/remembering';
import type { Limits } from './interval';

/** A page has many intervals with the same degrees of freedom. */
const quantile = remembering(chiSquareQuantile);
const upperQuantile = remembering(chiSquareUpperQuantile);

/**
 * Interval for a standard deviation estimated with `df` degrees of freedom from normal readings.
 *
 * low = sd √(df / χ²(1 − a/2; df)), high = sd √(df / χ²(a/2; df)), a = 1 − level. `df` need not be whole.
 * Null limits where df = 0. RangeError for a negative or non-finite sd or df.
 * Source: NIST/SEMATECH e-Handbook of Statistical Methods, 7.2.3.
 */
export function sdInterval(sd: number, df: number, level = 0.95): Limits {
  requireNotNegative('A standard deviation', sd);
  requireNotNegative('The degrees of freedom of a standard deviation', df);
  requireLevel('The level of an interval', level);
  if (df === 0) {
    return { low: null, high: null, why: 'With no degrees of freedom nothing is known of the scatter.' };
  }
  const tail = (1 - level) / 2;
  return {
    low: sd * Math.sqrt(df / upperQuantile(tail, df)),
    high: sd * Math.sqrt(df / quantile(tail, df)),
    why: null,
  };
}

/**
 * One-sided upper limit for a standard deviation: sd √(df / χ²(1 − level; df)); null where df = 0.
 * Source: as `sdInterval`.
 */
export function sdUpperLimit(sd: number, df: number, level = 0.95): number | null {
  requireNotNegative('A standard deviation', sd);
  requireNotNegative('The degrees of freedom of a standard deviation', df);
  requireLevel('The level of a limit', level);
  return df === 0 ? null : sd * Math.sqrt(df / quantile(1 - level, df));
}

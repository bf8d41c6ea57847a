import { requireAllFinite, requireFinite, requireLevel, requireNotNegative } from '@/lib/stats/arguments';
import { tUpperQuantile } from '@/lib/stats/distributions';
import { remembering } from '@/lib/stats/numeric/remembering';
import type { Limits } from './interval';

const upperQuantile = remembering(tUpperQuantile);

/**
 * Student's t interval: estimate ± t(1 − a/2; df) × standard error. `df` may be broken, or Infinity for the
 * normal interval; null limits where df = 0. Source: JCGM 100:2008 (GUM), G.3.
 */
export function tInterval(estimate: number, standardError: number, df: number, level = 0.95): Limits {
  requireFinite('The estimate', estimate);
  requireNotNegative('The standard error', standardError);
  if (!(df >= 0)) throw new RangeError(`The degrees of freedom must be zero or more; they are ${df}.`);
  requireLevel('The level of an interval', level);
  if (df === 0) {
    return { low: null, high: null, why: 'With no degrees of freedom nothing is known of the scatter.' };
  }
  const half = upperQuantile((1 - level) / 2, df) * standardError;
  return { low: estimate - half, high: estimate + half, why: null };
}

export interface MeanInterval extends Limits {
  /** Null only where there are no values. */
  mean: number | null;
  /** Sample standard deviation (divisor n − 1), null for fewer than two values. */
  sd: number | null;
  df: number | null;
}

/**
 * Mean of independent values with its t interval. Limits null for fewer than two values, and `why` says so.
 * The mean is taken about the first value and corrected, so that many common leading digits cost nothing.
 * RangeError where a value is not finite. Source: NIST/SEMATECH e-Handbook, 7.2.2.
 */
export function meanInterval(values: readonly number[], level = 0.95): MeanInterval {
  requireAllFinite('The values', values);
  requireLevel('The level of an interval', level);
  const [origin] = values;
  if (origin === undefined) {
    return { mean: null, sd: null, df: null, low: null, high: null, why: 'There are no values.' };
  }
  const n = values.length;
  const shift = values.reduce((sum, value) => sum + (value - origin), 0) / n;
  let rest = 0;
  let squares = 0;
  for (const value of values) {
    const d = value - origin - shift;
    rest += d;
    squares += d * d;
  }
  const mean = origin + (shift + rest / n);
  if (n === 1) {
    return { mean, sd: null, df: null, low: null, high: null, why: 'One value shows no scatter.' };
  }
  const sd = Math.sqrt((squares - (rest * rest) / n) / (n - 1));
  return { mean, sd, df: n - 1, ...tInterval(mean, sd / Math.sqrt(n), n - 1, level) };
}

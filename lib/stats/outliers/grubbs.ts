import { requireAllFinite, requireLevel, requireWhole } from '@/lib/stats/arguments';
import { tUpper, tUpperQuantile } from '@/lib/stats/distributions';
import { meanInterval } from '@/lib/stats/intervals';
import { noTest, type Outlier } from './outlier';

/** `two`: either end; `upper` or `lower`: the largest or the smallest value alone. */
export type GrubbsSides = 'two' | 'upper' | 'lower';

/**
 * Grubbs' test for one outlier among normal values: G = |suspect − mean|/s, s with divisor n − 1 and the
 * suspect included. Null for fewer than three values or where all are equal.
 *
 * RangeError for values that are not finite. Source: NIST/SEMATECH e-Handbook, 1.3.5.17.1; ISO 5725-2, 8.3.
 */
export function grubbs(
  values: readonly number[],
  options: { alpha?: number; sides?: GrubbsSides } = {},
): Outlier {
  const { alpha = 0.05, sides = 'two' } = options;
  requireAllFinite('The values', values);
  requireLevel('The level of significance', alpha);
  const n = values.length;
  if (n < 3) return noTest('Grubbs’ test needs three values.');
  const { mean, sd } = meanInterval(values);
  if (mean === null || sd === null || sd === 0) return noTest('All values are equal.');
  const distances = values.map((value) => (sides === 'lower' ? mean - value : value - mean));
  const sizes = sides === 'two' ? distances.map(Math.abs) : distances;
  const furthest = sizes.reduce((best, size) => Math.max(best, size), -Infinity);
  const statistic = furthest / sd;
  const critical = grubbsCritical(n, alpha, sides);
  // G² n (n − 2) / ((n − 1)² − G² n) is the square of a t with n − 2 df.
  const room = (n - 1) ** 2 - n * statistic * statistic;
  const t = room > 0 ? Math.sqrt((n * (n - 2) * statistic * statistic) / room) : Infinity;
  const p = Math.min(1, (sides === 'two' ? 2 * n : n) * tUpper(t, n - 2));
  return { statistic, critical, p, index: sizes.indexOf(furthest), outlier: statistic > critical, why: null };
}

/**
 * Critical value of Grubbs' G: (n − 1)/√n √(t²/(n − 2 + t²)), t the upper α/(2n) quantile of Student's t with
 * n − 2 df (α/n for one side). A Bonferroni bound, exact for small n; ISO 5725-2 tabulates the two-sided one.
 * RangeError for n < 3. Source: NIST/SEMATECH e-Handbook, 1.3.5.17.1; Wilrich (2013), AStA 97, 1–10.
 */
export function grubbsCritical(n: number, alpha = 0.05, sides: GrubbsSides = 'two'): number {
  requireWhole('The number of values of Grubbs’ test', n, 3);
  requireLevel('The level of significance', alpha);
  const t = tUpperQuantile(alpha / ((sides === 'two' ? 2 : 1) * n), n - 2);
  return (n - 1) / Math.sqrt(n) / Math.sqrt(1 + (n - 2) / (t * t));
}

import { requireLevel, requireNotNegative, requireWhole } from '@/lib/stats/arguments';
import { fUpper, fUpperQuantile } from '@/lib/stats/distributions';
import { noTest, type Outlier } from './outlier';

/**
 * Cochran's test for one too large of p standard deviations, each of `n` values: C = max s²/Σ s².
 * Null for fewer than two of them or where all are zero.
 *
 * RangeError for a negative sd or n < 2. Source: ISO 5725-2, 8.3; Wilrich (2013), AStA 97, 1–10.
 */
export function cochran(sds: readonly number[], n: number, options: { alpha?: number } = {}): Outlier {
  const { alpha = 0.05 } = options;
  sds.forEach((sd) => requireNotNegative('A standard deviation', sd));
  requireWhole('The number of values behind each standard deviation', n, 2);
  requireLevel('The level of significance', alpha);
  const p = sds.length;
  if (p < 2) return noTest('Cochran’s test needs two standard deviations.');
  const largest = sds.reduce((most, sd) => Math.max(most, sd), 0);
  if (largest === 0) return noTest('All standard deviations are zero.');
  const rest = sds.reduce((sum, sd) => sum + (sd / largest) ** 2, 0) - 1;
  const statistic = 1 / (1 + rest);
  const critical = cochranCritical(p, n, alpha);
  const chance = rest > 0 ? fUpper((p - 1) / rest, n - 1, (p - 1) * (n - 1)) : 0;
  return {
    statistic,
    critical,
    p: Math.min(1, p * chance),
    index: sds.indexOf(largest),
    outlier: statistic > critical,
    why: null,
  };
}

/**
 * Critical value of Cochran's C for p standard deviations of n values: 1/(1 + (p − 1)/F), F the upper α/p
 * quantile of F with n − 1 and (p − 1)(n − 1) df. Exact above ½, a bound below.
 * RangeError for p < 2 or n < 2. Source: as `cochran`.
 */
export function cochranCritical(p: number, n: number, alpha = 0.05): number {
  requireWhole('The number of standard deviations', p, 2);
  requireWhole('The number of values behind each standard deviation', n, 2);
  requireLevel('The level of significance', alpha);
  return 1 / (1 + (p - 1) / fUpperQuantile(alpha / p, n - 1, (p - 1) * (n - 1)));
}

import {
  requireAllFinite,
  requireEqualLengths,
  requireLevel,
  requireNotNegative,
  requireWhole,
} from '@/lib/stats/arguments';
import { fUpperQuantile, tUpperQuantile } from '@/lib/stats/distributions';
import { meanInterval } from '@/lib/stats/intervals';

export interface Consistency {
  /** Between groups: (mean − mean of means)/sd of means, one a group; null where that cannot be had. */
  h: number[] | null;
  hCritical: number | null;
  /** Within groups: sd/√(mean of s²), one a group; null where that cannot be had. */
  k: number[] | null;
  kCritical: number | null;
  /** Places, from 0, of the groups beyond the critical values. */
  hBeyond: number[];
  kBeyond: number[];
  why: string | null;
}

/**
 * Mandel's h and k of p groups (technicians, say) with means and sds of `n` values each. The level α holds for
 * each group by itself, unlike Grubbs' and Cochran's, so with many groups some lie beyond by chance.
 *
 * RangeError for lists of unequal length, a negative sd, or n < 2. Source: ISO 5725-2, 7.3.1 and its annex.
 */
export function mandel(
  groups: { means: readonly number[]; sds: readonly number[]; n: number },
  options: { alpha?: number } = {},
): Consistency {
  const { means, sds, n } = groups;
  const { alpha = 0.05 } = options;
  requireEqualLengths('The means', means, 'the standard deviations', sds);
  requireAllFinite('The means', means);
  sds.forEach((sd) => requireNotNegative('A standard deviation', sd));
  requireWhole('The number of values of a group', n, 2);
  requireLevel('The level of significance', alpha);
  const p = means.length;
  const { mean, sd: sdOfMeans } = meanInterval(means);
  const canH = p >= 3 && mean !== null && sdOfMeans !== null && sdOfMeans > 0;
  const h = canH ? means.map((each) => (each - mean) / sdOfMeans) : null;
  const pooled = Math.sqrt(sds.reduce((sum, sd) => sum + (sd * sd) / p, 0));
  const k = p >= 2 && pooled > 0 ? sds.map((sd) => sd / pooled) : null;
  const hCritical = p >= 3 ? mandelHCritical(p, alpha) : null;
  const kCritical = p >= 2 ? mandelKCritical(p, n, alpha) : null;
  const reasons = [
    h ? null : p < 3 ? 'h needs three groups.' : 'All means are equal, so h does not exist.',
    k ? null : p < 2 ? 'k needs two groups.' : 'All standard deviations are zero, so k does not exist.',
  ].filter((reason) => reason !== null);
  return {
    h,
    hCritical,
    k,
    kCritical,
    hBeyond: places(h, hCritical),
    kBeyond: places(k, kCritical),
    why: reasons.length > 0 ? reasons.join(' ') : null,
  };
}

/** (p − 1) t/√(p (t² + p − 2)), t the upper α/2 quantile with p − 2 df; p ≥ 3. Wilrich (2013), AStA 97, 1–10. */
export function mandelHCritical(p: number, alpha = 0.05): number {
  requireWhole('The number of groups', p, 3);
  requireLevel('The level of significance', alpha);
  const t = tUpperQuantile(alpha / 2, p - 2);
  return (p - 1) / Math.sqrt(p * (1 + (p - 2) / (t * t)));
}

/** √(p/(1 + (p − 1)/F)), F the upper α quantile with n − 1 and (p − 1)(n − 1) df; p ≥ 2. Wilrich (2013). */
export function mandelKCritical(p: number, n: number, alpha = 0.05): number {
  requireWhole('The number of groups', p, 2);
  requireWhole('The number of values of a group', n, 2);
  requireLevel('The level of significance', alpha);
  return Math.sqrt(p / (1 + (p - 1) / fUpperQuantile(alpha, n - 1, (p - 1) * (n - 1))));
}

function places(values: number[] | null, critical: number | null): number[] {
  if (!values || critical === null) return [];
  return values.flatMap((value, i) => (Math.abs(value) > critical ? [i] : []));
}

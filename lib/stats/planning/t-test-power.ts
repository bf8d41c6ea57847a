import { requireFinite, requireLevel } from '@/lib/stats/arguments';
import { noncentralTUpper, tUpperQuantile } from '@/lib/stats/distributions';

export interface TTestDesign {
  /** True difference in sds, above zero. */
  effect: number;
  /** 1: one mean against a known value. 2: two means of n readings each. */
  samples: 1 | 2;
  /** Level of the two-sided test. Default 0.05. */
  alpha?: number;
  /** Count rejections on the wrong side too. Default false: they are no success. */
  strict?: boolean;
}

/**
 * Chance that a two-sided t test with n readings (n in each of two samples) shows a true difference. n ≥ 2, not
 * necessarily whole. Absolute error below 1e-10. Source: Cohen (1988), Statistical Power Analysis, chapter 2, with the
 * noncentral t distribution.
 */
export function tTestPower(
  n: number,
  { effect, samples, alpha = 0.05, strict = false }: TTestDesign,
): number {
  requireFinite('The effect', effect);
  requireLevel('The level of significance', alpha);
  if (!(n >= 2 && n < Infinity)) throw new RangeError(`A t test needs at least two readings, not ${n}.`);
  const df = (n - 1) * samples;
  const delta = effect * Math.sqrt(n / samples);
  const limit = tUpperQuantile(alpha / 2, df);
  const right = noncentralTUpper(limit, df, delta);
  return strict ? right + noncentralTUpper(limit, df, -delta) : right;
}

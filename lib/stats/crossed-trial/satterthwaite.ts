import { chiSquareQuantile, chiSquareUpperQuantile } from '@/lib/stats/distributions';
import { estimateOf, type Combination } from './mean-squares';
import type { SatterthwaiteInterval } from './types';

/**
 * Interval of a combination of mean squares that takes it for a multiple of chi-square.
 *
 * df = g² / Σ (c MS)² / df_i. Null where the estimate g is not above 0. With df far below 1 the upper limit is
 * correct arithmetic and useless; the modified-large-sample limit is the one to read.
 * Source: Satterthwaite (1946), Biometrics Bulletin 2, 110–114.
 */
export function satterthwaiteInterval(combination: Combination, level: number): SatterthwaiteInterval {
  const estimate = estimateOf(combination);
  const spread = combination.reduce((sum, { weight, ms, df }) => sum + (weight * ms) ** 2 / df, 0);
  if (!(estimate > 0) || !(spread > 0)) return { df: null, low: null, high: null };
  const df = estimate ** 2 / spread;
  const tail = (1 - level) / 2;
  const high = (df * estimate) / chiSquareQuantile(tail, df);
  return {
    df,
    low: (df * estimate) / chiSquareUpperQuantile(tail, df),
    high: Number.isFinite(high) ? high : null,
  };
}

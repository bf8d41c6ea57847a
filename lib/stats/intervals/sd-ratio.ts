import { requireLevel, requireNotNegative } from '@/lib/stats/arguments';
import { fCdf, fUpper, fUpperQuantile } from '@/lib/stats/distributions';
import { remembering } from '@/lib/stats/numeric/remembering';
import type { Limits } from './interval';

const upperQuantile = remembering(fUpperQuantile);

export interface SdRatio extends Limits {
  /** first / second; null where it cannot be had. */
  ratio: number | null;
  /** Two-sided p of equal sds. */
  p: number | null;
}

/**
 * Ratio of two independent standard deviations of normal readings, with the interval of the F distribution:
 * ratio / √F(1 − a/2; df₁, df₂) … ratio × √F(1 − a/2; df₂, df₁), a = 1 − level. Degrees of freedom need not be whole.
 * Null with `why` where one has no degrees of freedom or the second sd is 0. RangeError for negative arguments.
 * Source: NIST/SEMATECH e-Handbook, 1.3.5.9; checked against the F distribution of scipy (`f.ppf`, `f.sf`).
 */
export function sdRatio(
  first: { sd: number; df: number },
  second: { sd: number; df: number },
  level = 0.95,
): SdRatio {
  for (const { sd, df } of [first, second]) {
    requireNotNegative('A standard deviation', sd);
    requireNotNegative('The degrees of freedom of a standard deviation', df);
  }
  requireLevel('The level of an interval', level);
  const none = { ratio: null, low: null, high: null, p: null };
  if (first.df === 0 || second.df === 0) {
    return { ...none, why: 'With no degrees of freedom nothing is known of one of both scatters.' };
  }
  if (second.sd === 0) return { ...none, why: 'The scatter to compare with is 0.' };
  const ratio = first.sd / second.sd;
  const tail = (1 - level) / 2;
  const f = ratio * ratio;
  return {
    ratio,
    low: ratio / Math.sqrt(upperQuantile(tail, first.df, second.df)),
    high: ratio * Math.sqrt(upperQuantile(tail, second.df, first.df)),
    p: Math.min(1, 2 * Math.min(fUpper(f, first.df, second.df), fCdf(f, first.df, second.df))),
    why: null,
  };
}

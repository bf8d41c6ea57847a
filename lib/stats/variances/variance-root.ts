import { requireNotNegative } from '@/lib/stats/arguments';
import { logGamma } from '@/lib/stats/distributions';

/** The variance of a group: its degrees of freedom and its sum of squares about its mean. */
export interface VarianceGroup {
  df: number;
  ss: number;
}

/** A variance on a scale on which it is nearly normal. */
export interface VarianceRoot {
  /** Unbiased estimate of σ^(2/3). */
  root: number;
  /** Of normal values the sd of `root` is σ^(2/3) / √`weight`: about 4.5 times the degrees of freedom. */
  weight: number;
}

/**
 * The cube root of a variance, on which scale variances of normal values are themselves nearly normal, with a spread that
 * does not depend on σ other than in proportion. Its mean and sd are those of the cube root of χ², exactly. Null without a
 * degree of freedom. RangeError for what is negative or not finite.
 * Source: Wilson & Hilferty (1931), Proc. Nat. Acad. Sci. 17, 684–688.
 */
export function varianceRoot({ df, ss }: VarianceGroup): VarianceRoot | null {
  requireNotNegative('The degrees of freedom of a group', df);
  requireNotNegative('The sum of squares of a group', ss);
  if (df === 0) return null;
  const mean = moment(df, 1 / 3);
  const square = moment(df, 2 / 3);
  return { root: Math.cbrt(ss / df) / mean, weight: (mean * mean) / (square - mean * mean) };
}

/** E (χ²/ν)^power. */
const moment = (df: number, power: number): number =>
  Math.exp(logGamma(df / 2 + power) - logGamma(df / 2) + power * Math.log(2 / df));

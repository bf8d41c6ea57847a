import quantile from '@stdlib/stats-base-dists-f-quantile';
import { requirePositive, requireProbability } from '@/lib/stats/arguments';
import { incompleteBeta } from './incomplete-beta';
import { refineQuantile } from './refine-quantile';
import { binomialTerm } from './saddle-point';

/** P(F ≤ x) of F with `df1` and `df2` degrees of freedom (above zero, not necessarily whole). */
export function fCdf(x: number, df1: number, df2: number): number {
  return tails(x, df1, df2).lower;
}

/** P(F > x), from its own tail. */
export function fUpper(x: number, df1: number, df2: number): number {
  return tails(x, df1, df2).upper;
}

/** Density of F at x > 0. */
export function fDensity(x: number, df1: number, df2: number): number {
  const scale = df1 * x + df2;
  const term = binomialTerm(df1 / 2, df2 / 2, (df1 * x) / scale, df2 / scale);
  return (term * df1 * df2) / (2 * (df1 + df2) * x);
}

/** The x with P(F ≤ x) = p: the library's quantile, polished. */
export function fQuantile(p: number, df1: number, df2: number): number {
  requireProbability('The probability of an F quantile', p);
  if (p > 0.5) return fUpperQuantile(1 - p, df1, df2);
  if (p === 0) return 0;
  const start = quantile(p, df1, df2);
  return refineQuantile(
    start,
    p,
    true,
    (x) => fCdf(x, df1, df2),
    (x) => fDensity(x, df1, df2),
  );
}

/** The x with P(F > x) = q, accurate for small q: the inverse of the other distribution's lower quantile. */
export function fUpperQuantile(q: number, df1: number, df2: number): number {
  requireProbability('The probability of an F quantile', q);
  if (q === 0) return Infinity;
  if (q > 0.5) return fQuantile(1 - q, df1, df2);
  return 1 / fQuantile(q, df2, df1);
}

function tails(x: number, df1: number, df2: number): { lower: number; upper: number } {
  requirePositive('The first degrees of freedom of F', df1);
  requirePositive('The second degrees of freedom of F', df2);
  if (x <= 0) return { lower: 0, upper: 1 };
  if (x === Infinity) return { lower: 1, upper: 0 };
  const scale = df1 * x + df2;
  return incompleteBeta((df1 * x) / scale, df2 / scale, df1 / 2, df2 / 2);
}

import quantile from '@stdlib/stats-base-dists-chisquare-quantile';
import { requirePositive, requireProbability } from '@/lib/stats/arguments';
import { incompleteGamma } from './incomplete-gamma';
import { normalQuantile } from './normal';
import { refineQuantile } from './refine-quantile';
import { poissonTerm } from './saddle-point';

const DF = 'The degrees of freedom of chi-square';

/** Density of chi-square with `df` degrees of freedom (above zero) at x > 0. */
export function chiSquareDensity(x: number, df: number): number {
  const half = df / 2;
  return (poissonTerm(half, x / 2) * half) / x;
}

/** P(X ≤ x) of chi-square with `df` degrees of freedom (above zero, not necessarily whole). */
export function chiSquareCdf(x: number, df: number): number {
  requirePositive(DF, df);
  return incompleteGamma(df / 2, x / 2).lower;
}

/** P(X > x) of chi-square, from its own tail. */
export function chiSquareUpper(x: number, df: number): number {
  requirePositive(DF, df);
  return incompleteGamma(df / 2, x / 2).upper;
}

/** The x with P(X ≤ x) = p: the library's quantile, polished (it is 5e-4 off at 10,000 df). */
export function chiSquareQuantile(p: number, df: number): number {
  return solve(p, df, true);
}

/** The x with P(X > x) = q, accurate for small q. */
export function chiSquareUpperQuantile(q: number, df: number): number {
  return solve(q, df, false);
}

function solve(p: number, df: number, rising: boolean): number {
  requirePositive(DF, df);
  requireProbability('The probability of a chi-square quantile', p);
  if (p === 0) return rising ? 0 : Infinity;
  if (p === 1) return rising ? Infinity : 0;
  if (p > 0.5) return solve(1 - p, df, !rising);
  const tail = (x: number) => (rising ? chiSquareCdf(x, df) : chiSquareUpper(x, df));
  return refineQuantile(start(p, df, rising), p, rising, tail, (x) => chiSquareDensity(x, df));
}

/** The library's quantile; above 500 df, where that is unreliable, Wilson and Hilferty's (1931). */
function start(p: number, df: number, rising: boolean): number {
  if (df <= 500 && (rising || p > 1e-10)) return quantile(rising ? p : 1 - p, df);
  const h = 2 / (9 * df);
  const z = rising ? normalQuantile(p) : -normalQuantile(p);
  return df * (1 - h + z * Math.sqrt(h)) ** 3;
}

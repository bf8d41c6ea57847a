import quantile from '@stdlib/stats-base-dists-t-quantile';
import { requireProbability } from '@/lib/stats/arguments';
import { incompleteBeta } from './incomplete-beta';
import { normalUpper, normalUpperQuantile } from './normal';

/** P(T ≤ t) of Student's t with `df` degrees of freedom (above zero, not necessarily whole, or Infinity). */
export function tCdf(t: number, df: number): number {
  return tUpper(-t, df);
}

/** P(T > t) of Student's t, relative error below 1e-11 down to 1e-12 and beyond. */
export function tUpper(t: number, df: number): number {
  requireDf(df);
  if (df === Infinity) return normalUpper(t);
  if (Math.abs(t) === Infinity) return t > 0 ? 0 : 1;
  const square = t * t;
  const half = incompleteBeta(df / (df + square), square / (df + square), df / 2, 0.5).lower / 2;
  return t >= 0 ? half : 1 - half;
}

/** The t with P(T ≤ t) = p. */
export function tQuantile(p: number, df: number): number {
  return p <= 0.5 ? -tUpperQuantile(p, df) : tUpperQuantile(1 - p, df);
}

/** The t with P(T > t) = q, relative error below 1e-13 for q from 1e-12 and df from ½ (the library's). */
export function tUpperQuantile(q: number, df: number): number {
  requireDf(df);
  requireProbability('The probability of a t quantile', q);
  if (q > 0.5) return -tUpperQuantile(1 - q, df);
  if (q === 0) return Infinity;
  if (q === 0.5) return 0;
  return df === Infinity ? normalUpperQuantile(q) : -quantile(q, df);
}

function requireDf(df: number): void {
  if (!(df > 0)) throw new RangeError(`The degrees of freedom of t must be above zero; they are ${df}.`);
}

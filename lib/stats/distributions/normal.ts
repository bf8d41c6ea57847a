import erfc from '@stdlib/math-base-special-erfc';
import quantile from '@stdlib/stats-base-dists-normal-quantile';
import { requireProbability } from '@/lib/stats/arguments';
import { integratePanel } from '@/lib/stats/numeric/gauss-legendre';

/** Density of the standard normal distribution. */
export function normalDensity(z: number): number {
  return Math.exp(-0.5 * z * z) / Math.sqrt(2 * Math.PI);
}

/** P(Z ≤ z) of the standard normal distribution, relative error below 1e-12 down to 1e-300. */
export function normalCdf(z: number): number {
  return 0.5 * erfc(-z / Math.SQRT2);
}

/** P(Z > z) of the standard normal distribution; never as 1 − P(Z ≤ z), which loses the tail. */
export function normalUpper(z: number): number {
  return 0.5 * erfc(z / Math.SQRT2);
}

/**
 * P(a < Z ≤ b) without cancellation: two tails of the same side are differenced where both limits lie on
 * that side of the mean, and a narrow interval is integrated. Zero where b ≤ a. Either limit may be infinite.
 */
export function normalBetween(a: number, b: number): number {
  if (!(b > a)) return 0;
  if (b - a < 0.5) return integratePanel(normalDensity, a, b, 12);
  if (a > 0) return normalUpper(a) - normalUpper(b);
  if (b < 0) return normalCdf(b) - normalCdf(a);
  return 1 - normalCdf(a) - normalUpper(b);
}

/** The z with P(Z ≤ z) = p. Minus and plus infinity at 0 and 1. */
export function normalQuantile(p: number): number {
  return p <= 0.5 ? -normalUpperQuantile(p) : normalUpperQuantile(1 - p);
}

/**
 * The z with P(Z > z) = q, relative error below 1e-14 down to q = 1e-300.
 *
 * The library's quantile starts it; Newton steps on ln P(Z > z) finish it, because the library loses
 * digits beyond 1e-8 (4e-7 at 1e-12) and gives infinity beyond 1e-16. There the tail itself starts it: with
 * t = −2 ln q, z² is near t − ln(2π t) (Abramowitz and Stegun, 26.2.12).
 */
export function normalUpperQuantile(q: number): number {
  requireProbability('The probability of a normal quantile', q);
  if (q > 0.5) return -normalUpperQuantile(1 - q);
  if (q === 0) return Infinity;
  let z = q < 1e-15 ? farOut(q) : -quantile(q, 0, 1);
  for (let step = 0; step < 4; step++) {
    const tail = normalUpper(z);
    z += (Math.log(tail / q) * tail) / normalDensity(z);
  }
  return z;
}

function farOut(q: number): number {
  const t = -2 * Math.log(q);
  return Math.sqrt(t - Math.log(2 * Math.PI * t));
}

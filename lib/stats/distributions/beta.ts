import quantile from '@stdlib/stats-base-dists-beta-quantile';
import { requirePositive, requireProbability } from '@/lib/stats/arguments';
import { incompleteBeta } from './incomplete-beta';
import { refineQuantile } from './refine-quantile';
import { binomialTerm } from './saddle-point';

/** Density of Beta(a, b) at 0 < x < 1. */
export function betaDensity(x: number, a: number, b: number): number {
  return (binomialTerm(a, b, x, 1 - x) * a * b) / ((a + b) * x * (1 - x));
}

/** P(X ≤ x) of Beta(a, b), a and b above zero. */
export function betaCdf(x: number, a: number, b: number): number {
  requireShape(a, b);
  return incompleteBeta(x, 1 - x, a, b).lower;
}

/** P(X > x) of Beta(a, b), from its own tail. */
export function betaUpper(x: number, a: number, b: number): number {
  requireShape(a, b);
  return incompleteBeta(x, 1 - x, a, b).upper;
}

/** The x with P(X ≤ x) = p: the library's quantile, polished. */
export function betaQuantile(p: number, a: number, b: number): number {
  requireShape(a, b);
  requireProbability('The probability of a beta quantile', p);
  if (p === 0 || p === 1) return p;
  if (p > 0.5) return betaUpperQuantile(1 - p, a, b);
  const x = quantile(p, a, b);
  return x < 1 ? solve(x, p, a, b, true) : 1;
}

/** The x with P(X > x) = q, accurate for small q, and relative to x where x is small. */
export function betaUpperQuantile(q: number, a: number, b: number): number {
  requireShape(a, b);
  requireProbability('The probability of a beta quantile', q);
  if (q === 0 || q === 1) return 1 - q;
  if (q > 0.5) return betaQuantile(1 - q, a, b);
  const x = 1 - quantile(q, b, a);
  return x > 0.5 ? 1 - betaQuantile(q, b, a) : solve(x, q, a, b, false);
}

function solve(start: number, p: number, a: number, b: number, rising: boolean): number {
  const tail = rising ? betaCdf : betaUpper;
  const x = refineQuantile(
    start,
    p,
    rising,
    (value) => tail(value, a, b),
    (value) => (value < 1 ? betaDensity(value, a, b) : 0),
  );
  return Math.min(x, 1);
}

function requireShape(a: number, b: number): void {
  requirePositive('The first shape of a beta distribution', a);
  requirePositive('The second shape of a beta distribution', b);
}

import { requireProbability, requireWhole } from '@/lib/stats/arguments';
import { incompleteBeta } from './incomplete-beta';
import { binomialTerm } from './saddle-point';

/** P(X = k) of n trials with chance p each. */
export function binomialProbability(k: number, n: number, p: number): number {
  check(n, p);
  return Number.isInteger(k) && k >= 0 && k <= n ? binomialTerm(k, n - k, p, 1 - p) : 0;
}

/** P(X ≤ k) of n trials with chance p each; k may lie outside 0 … n. */
export function binomialCdf(k: number, n: number, p: number): number {
  check(n, p);
  if (k < 0) return 0;
  if (k >= n) return 1;
  const whole = Math.floor(k);
  return incompleteBeta(p, 1 - p, whole + 1, n - whole).upper;
}

/** P(X ≥ k), from its own tail. */
export function binomialAtLeast(k: number, n: number, p: number): number {
  check(n, p);
  if (k <= 0) return 1;
  if (k > n) return 0;
  const whole = Math.ceil(k);
  return incompleteBeta(p, 1 - p, whole, n - whole + 1).lower;
}

function check(n: number, p: number): void {
  requireWhole('The number of trials', n);
  requireProbability('The chance of a trial', p);
}

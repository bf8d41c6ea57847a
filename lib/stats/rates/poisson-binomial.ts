import { requireProbability, requireWhole } from '@/lib/stats/arguments';

/** Distribution of the number of successes among trials that each have a chance of their own. */
export interface PoissonBinomial {
  mean: number;
  variance: number;
  /** The least and the greatest k whose probability is not negligible. */
  first: number;
  last: number;
  /** P(X = k). */
  probability: (k: number) => number;
  /** P(X ≤ k) and P(X ≥ k), each summed from its own end. */
  atMost: (k: number) => number;
  atLeast: (k: number) => number;
  /** The smallest k with P(X ≤ k) ≥ p. */
  quantile: (p: number) => number;
}

/** Probabilities below this at either end of the row are dropped: together they stay below 1e-15. */
const NEGLIGIBLE = 1e-22;

/**
 * Exact distribution of a sum of independent trials with chances p₁ … pₙ, by adding one trial after another. The row
 * of probabilities is kept only where it is not negligible, so n trials cost about n^1.5 steps.
 * RangeError for a chance outside 0 … 1. Source: Wang (1993), Statistica Sinica 3, 295–312 (definition).
 */
export function poissonBinomial(chances: readonly number[]): PoissonBinomial {
  for (const p of chances) requireProbability('The chance of a trial', p);
  // By number of successes, in place: from the greatest down, so that each is still there when it is asked for.
  const all = new Float64Array(chances.length + 1);
  all[0] = 1;
  let start = 0;
  let end = 1;
  for (const p of chances) {
    const q = 1 - p;
    all[end] = (all[end - 1] ?? 0) * p;
    for (let k = end - 1; k > start; k--) all[k] = (all[k - 1] ?? 0) * p + (all[k] ?? 0) * q;
    all[start] = (all[start] ?? 0) * q;
    end++;
    while (end - start > 1 && (all[start] ?? 0) < NEGLIGIBLE) start++;
    while (end - start > 1 && (all[end - 1] ?? 0) < NEGLIGIBLE) end--;
  }
  const row = all.subarray(start, end);
  const first = start;
  const atMost = (k: number) => sum(row.slice(0, Math.max(0, Math.floor(k) - first + 1)));
  return {
    first,
    last: first + row.length - 1,
    mean: chances.reduce((total, p) => total + p, 0),
    variance: chances.reduce((total, p) => total + p * (1 - p), 0),
    probability: (k) => row[k - first] ?? 0,
    atMost,
    atLeast: (k) => sum(row.slice(Math.max(0, Math.ceil(k) - first)).reverse()),
    quantile(p) {
      requireProbability('The probability of a quantile', p);
      let below = 0;
      for (let i = 0; i < row.length; i++) {
        below += row[i] ?? 0;
        if (below >= p * (1 - 1e-12)) return first + i;
      }
      return first + row.length - 1;
    },
  };
}

/** Throws unless `x` is a whole number of successes among the trials. */
export function requireSuccesses(x: number, trials: number): void {
  requireWhole('The number of successes', x);
  if (x > trials) throw new RangeError(`There are more successes (${x}) than trials (${trials}).`);
}

const sum = (values: Float64Array): number =>
  Math.min(
    1,
    values.reduce((total, v) => total + v, 0),
  );

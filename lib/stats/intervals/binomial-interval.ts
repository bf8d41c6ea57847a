import { requireLevel, requireWhole } from '@/lib/stats/arguments';
import { betaQuantile, betaUpperQuantile, normalUpperQuantile } from '@/lib/stats/distributions';
import { remembering } from '@/lib/stats/numeric/remembering';
import type { Limits } from './interval';

export type BinomialMethod = 'wilson' | 'jeffreys' | 'clopper-pearson';

export interface BinomialIntervalOptions {
  /** Default `wilson`. */
  method?: BinomialMethod;
  /** Default 0.95. */
  level?: number;
}

/**
 * Two-sided interval for the chance behind x successes in n trials; null limits where n = 0.
 *
 * - `wilson`: the score interval without continuity correction, exactly 0 at x = 0 and 1 at x = n.
 * - `jeffreys`: equal tails of Beta(x + ½, n − x + ½), the low limit 0 at x = 0 and the high limit 1 at x = n.
 *   Source of both: Brown, Cai and DasGupta (2001), Statistical Science 16, 101–133, sections 3.1.1 and 4.1.2.
 * - `clopper-pearson`: the exact interval, from the beta quantiles of the binomial tails; it covers at least
 *   `level`, usually more. Source: Clopper and Pearson (1934), Biometrika 26, 404–413.
 *
 * RangeError where x and n are not whole with 0 ≤ x ≤ n, or the level is not between 0 and 1.
 */
export function binomialInterval(x: number, n: number, options: BinomialIntervalOptions = {}): Limits {
  const { method = 'wilson', level = 0.95 } = options;
  requireWhole('The number of trials', n);
  requireWhole('The number of successes', x);
  if (x > n)
    throw new RangeError(`The number of successes (${x}) is larger than the number of trials (${n}).`);
  requireLevel('The level of an interval', level);
  if (n === 0) return { low: null, high: null, why: 'There are no trials yet.' };
  const tail = (1 - level) / 2;
  return { ...limits[method](x, n, tail), why: null };
}

const quantile = remembering(betaQuantile);
const upperQuantile = remembering(betaUpperQuantile);

type Bounds = (x: number, n: number, tail: number) => { low: number; high: number };

const limits: Record<BinomialMethod, Bounds> = {
  wilson(x, n, tail) {
    const z = normalUpperQuantile(tail);
    const square = z * z;
    const larger = x + square / 2 + z * Math.sqrt((x * (n - x)) / n + square / 4);
    // The smaller root of (n + z²) p² − (2x + z²) p + x²/n = 0 by the product of both: the usual
    // difference loses digits where x is small.
    return { low: (x * x) / n / larger, high: x === n ? 1 : larger / (n + square) };
  },
  jeffreys(x, n, tail) {
    return {
      low: x === 0 ? 0 : quantile(tail, x + 0.5, n - x + 0.5),
      high: x === n ? 1 : upperQuantile(tail, x + 0.5, n - x + 0.5),
    };
  },
  'clopper-pearson'(x, n, tail) {
    return {
      low: x === 0 ? 0 : quantile(tail, x, n - x + 1),
      high: x === n ? 1 : upperQuantile(tail, x + 1, n - x),
    };
  },
};

import { fisherUpper } from '@/lib/stats/contingency';
import { binomialInterval } from '@/lib/stats/intervals';
import { againstOthers, type Estimate } from './against-others';
import { SEEN } from './sizes';

export interface Count {
  n: number;
  x: number;
}

export interface RateTest {
  /** The larger of both p: beyond chance, and beyond what hands differ by. */
  p: number;
  rate: number;
  low: number;
  high: number;
  others: Count;
  /** Whether a rate of `size` would have given a p below `SEEN`, or is what the others have anyway. */
  enough: boolean;
}

export const total = (counts: readonly Count[]): Count =>
  counts.reduce((sum, { n, x }) => ({ n: sum.n + n, x: sum.x + x }), { n: 0, x: 0 });

/** ln of the odds, with half a case added to each side so that 0 of n has one. */
export function logOdds({ n, x }: Count): Estimate {
  const yes = x + 0.5;
  const no = n - x + 0.5;
  return { value: Math.log(yes / no), variance: 1 / yes + 1 / no, df: Infinity };
}

/**
 * The ln odds of several hands, each with the variance that its size leads one to expect at the rate of them all: by its
 * own few cases, 2 of 3 would seem to say more than 0 of 80.
 */
function weighedOdds(counts: readonly Count[]): Estimate[] {
  const { n, x } = total(counts);
  const rate = (x + 0.5) / (n + 1);
  return counts.map((count) => ({ ...logOdds(count), expected: 1 / (count.n * rate * (1 - rate)) }));
}

/**
 * Whether something happens more often in one hand than in the others: Fisher's exact test against them all together,
 * and `againstOthers` on the ln of odds; both must say so, so the larger p counts (an intersection–union test).
 * Null where there is nothing to compare.
 */
export function moreOften(
  own: Count,
  others: readonly Count[],
  spread: number,
  size: number,
): RateTest | null {
  const met = others.filter(({ n }) => n > 0);
  const pooled = total(met);
  if (own.n === 0 || pooled.n === 0) return null;
  const between = againstOthers(logOdds(own), weighedOdds(met), spread);
  const exact = (x: number): number => fisherUpper(x, own.n, pooled.x, pooled.n);
  const { low, high } = binomialInterval(own.x, own.n, { method: 'clopper-pearson' });
  return {
    p: Math.max(exact(own.x), between?.above ?? 0),
    rate: own.x / own.n,
    low: low ?? 0,
    high: high ?? 1,
    others: pooled,
    enough: own.n >= 4 && (pooled.x >= size * pooled.n || exact(Math.round(size * own.n)) <= SEEN),
  };
}

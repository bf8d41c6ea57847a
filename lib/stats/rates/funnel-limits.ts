import { requireLevel, requireProbability, requireWhole } from '@/lib/stats/arguments';
import { binomialAtLeast, binomialCdf, binomialProbability } from '@/lib/stats/distributions';

export interface FunnelLimits {
  /** Limits of the rate x/n, interpolated between counts, cut at 0. Null where n = 0. */
  low: number | null;
  high: number | null;
  /** The same limits at whole counts, r/n without interpolation: r is the smallest with P(X ≤ r) > tail. */
  lowCount: number | null;
  highCount: number | null;
  /** A count this small or smaller is an alarm of the exact test; −1 where even 0 is none. */
  lowAlarm: number | null;
  /** A count this large or larger is an alarm; n + 1 where even n is none. */
  highAlarm: number | null;
  why: string | null;
}

/** Ties between a tail and the level count, in spite of the last binary digits. */
const TIE = 1e-12;

/**
 * Exact binomial limits of a funnel plot around the rate `p0`, for a unit of n trials.
 *
 * With r the smallest count whose P(X ≤ r) exceeds the tail p, the limit is (r − a)/n,
 * a = (P(X ≤ r) − p)/P(X = r). At small n no high alarm may exist (`highAlarm` = n + 1) although the
 * interpolated high limit lies below 1: decide alarms by the counts, draw the curves by the limits.
 * RangeError where p0 is not in 0 … 1, n not whole, or the level not between 0 and 1.
 * Source: D. J. Spiegelhalter (2005), Statistics in Medicine 24, 1185–1202, appendix A.1.
 */
export function funnelLimits(p0: number, n: number, level = 0.95): FunnelLimits {
  requireProbability('The rate of a funnel', p0);
  requireWhole('The number of trials', n);
  requireLevel('The level of a funnel', level);
  if (n === 0) {
    const none = { low: null, high: null, lowCount: null, highCount: null, lowAlarm: null, highAlarm: null };
    return { ...none, why: 'There are no trials yet.' };
  }
  const tail = (1 - level) / 2;
  const lowCount = first(0, n, (k) => binomialCdf(k, n, p0) > tail * (1 + TIE));
  // P(X ≤ r) > 1 − tail, said with the upper tail, which keeps its digits.
  const highCount = first(0, n, (k) => binomialAtLeast(k + 1, n, p0) < tail * (1 - TIE));
  const lowPart = (binomialCdf(lowCount, n, p0) - tail) / binomialProbability(lowCount, n, p0);
  const highPart = (tail - binomialAtLeast(highCount + 1, n, p0)) / binomialProbability(highCount, n, p0);
  return {
    low: Math.max(0, (lowCount - lowPart) / n),
    high: Math.max(0, (highCount - highPart) / n),
    lowCount,
    highCount,
    lowAlarm: lowCount - 1,
    highAlarm: first(0, n + 1, (k) => binomialAtLeast(k, n, p0) <= tail * (1 + TIE)),
    why: null,
  };
}

/** The first whole number of from … to that holds, for a condition that stays true once it is; `to` if none. */
function first(from: number, to: number, holds: (k: number) => boolean): number {
  let low = from;
  let high = to;
  while (low < high) {
    const middle = Math.floor((low + high) / 2);
    if (holds(middle)) high = middle;
    else low = middle + 1;
  }
  return low;
}

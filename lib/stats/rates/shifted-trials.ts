import { findRoot } from '@/lib/stats/numeric/root';
import { poissonBinomial } from './poisson-binomial';

export type Side = 'at least' | 'at most';

/** Log-odds beyond which a chance is 0 or 1 to the last digit. */
const FARTHEST = 40;

/** A chance whose log-odds are shifted by θ. */
export function shifted(p: number, theta: number): number {
  return theta > 0
    ? p / (p + (1 - p) * Math.exp(-theta))
    : (p * Math.exp(theta)) / (1 - p + p * Math.exp(theta));
}

/**
 * The shift θ of the log-odds of all trials at which the probability of so many successes as were seen, or more (or
 * less), is `tail`.
 *
 * One shift of all log-odds weighs the probability of k successes by e^(θk), so the row of probabilities is added up
 * from the trials where it is centred on what was seen, and once more at the root itself, not at every step towards it.
 * @param chances between 0 and 1, both excluded.
 * @param seen above 0 for 'at least', below the number of trials for 'at most'.
 */
export function shiftAtTail(chances: readonly number[], seen: number, side: Side, tail: number): number {
  const middle = Math.min(chances.length - 0.5, Math.max(0.5, seen));
  const start = findRoot(
    (theta) => chances.reduce((sum, p) => sum + shifted(p, theta), 0) - middle,
    -FARTHEST,
    FARTHEST,
  );
  const near = start + stepToTail(chances, start, seen, side, tail);
  return near + stepToTail(chances, near, seen, side, tail);
}

function stepToTail(
  chances: readonly number[],
  from: number,
  seen: number,
  side: Side,
  tail: number,
): number {
  const { first, last, probability } = poissonBinomial(chances.map((p) => shifted(p, from)));
  const counts = Array.from({ length: last - first + 1 }, (_, i) => first + i);
  const tailAt = (step: number) => {
    // Weighed against the end that grows, so that no weight is ever too large for a number.
    const end = step > 0 ? last : first;
    let within = 0;
    let without = 0;
    for (const k of counts) {
      const weight = probability(k) * Math.exp(step * (k - end));
      if (side === 'at least' ? k >= seen : k <= seen) within += weight;
      else without += weight;
    }
    return within / (within + without);
  };
  return findRoot((step) => tailAt(step) - tail, -FARTHEST, FARTHEST);
}

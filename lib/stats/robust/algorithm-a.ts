import { median } from 'simple-statistics';
import { requireAllFinite } from '@/lib/stats/arguments';

export interface RobustMean {
  /** Robust mean; the median where `why` says that the algorithm is not usable; null without values. */
  mean: number | null;
  /** Robust standard deviation; null where not usable. */
  sd: number | null;
  iterations: number;
  /** How many values lie beyond mean ∓ 1.5 sd and were pulled in. */
  pulledLow: number;
  pulledHigh: number;
  why: string | null;
}

const MORE_THAN_HALF_EQUAL =
  'More than half of the values are equal, so the robust spread is zero: this is no measure of agreement.';

/**
 * Algorithm A: mean and standard deviation that a few wild values hardly move.
 *
 * Starts at x* = median, s* = 1.483 median|x − x*|; then pulls values in to x* ∓ 1.5 s* and takes
 * x* = mean, s* = 1.134 √(Σ(y − x*)²/(p − 1)) until nothing changes (the standard may stop at the third digit). The
 * rounded constants are part of the method. RangeError for values that are not finite.
 * Source: ISO 13528:2015, C.3.1; ISO 5725-5:1998, 5.2.
 */
export function algorithmA(values: readonly number[]): RobustMean {
  requireAllFinite('The values', values);
  const p = values.length;
  const unusable = { sd: null, iterations: 0, pulledLow: 0, pulledHigh: 0 };
  if (p === 0) return { mean: null, ...unusable, why: 'There are no values.' };
  const middle = median([...values]);
  if (p === 1) return { mean: middle, ...unusable, why: 'One value shows no scatter.' };

  // Everything about the median, so that many common leading digits cost nothing.
  const x = values.map((value) => value - middle);
  let mean = 0;
  let sd = 1.483 * median(x.map(Math.abs));
  const smallest = sd * 1e-12;
  if (sd === 0) return { mean: middle, ...unusable, why: MORE_THAN_HALF_EQUAL };
  let iterations = 0;
  for (let settled = false; !settled && iterations < 20_000; iterations++) {
    const low = mean - 1.5 * sd;
    const high = mean + 1.5 * sd;
    const pulled = x.map((value) => Math.min(Math.max(value, low), high));
    const nextMean = pulled.reduce((sum, value) => sum + value, 0) / p;
    const squares = pulled.reduce((sum, value) => sum + (value - nextMean) ** 2, 0);
    const nextSd = 1.134 * Math.sqrt(squares / (p - 1));
    settled =
      Math.max(Math.abs(nextMean - mean), Math.abs(nextSd - sd)) <=
      1e-15 * Math.max(Math.abs(nextMean), nextSd);
    mean = nextMean;
    sd = nextSd;
    if (sd < smallest) return { mean: middle + mean, ...unusable, iterations, why: MORE_THAN_HALF_EQUAL };
  }
  return {
    mean: middle + mean,
    sd,
    iterations,
    pulledLow: x.filter((value) => value < mean - 1.5 * sd).length,
    pulledHigh: x.filter((value) => value > mean + 1.5 * sd).length,
    why: null,
  };
}

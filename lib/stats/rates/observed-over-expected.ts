import { requireLevel } from '@/lib/stats/arguments';
import { poissonBinomial, requireSuccesses } from './poisson-binomial';
import { shifted, shiftAtTail, type Side } from './shifted-trials';

export interface ObservedOverExpected {
  observed: number;
  /** Σ of the chances. */
  expected: number;
  /** observed / expected with its limits; null where nothing is expected or there are no trials. */
  ratio: number | null;
  low: number | null;
  high: number | null;
  /** Two-sided probability of a count so far from the expected one if the chances hold: twice the smaller tail. */
  p: number | null;
  why: string | null;
}

/**
 * Successes seen over successes expected, where every trial has a chance of its own, with an exact interval.
 *
 * The group is allowed one shift θ of all its log-odds: pᵢ(θ) = pᵢ e^θ / (1 − pᵢ + pᵢ e^θ). The limits are those θ at
 * which the observed count, a sum of independent trials with chances pᵢ(θ), lies at the edge of either tail, and are
 * given as Σ pᵢ(θ) / Σ pᵢ. With equal chances that is the Clopper–Pearson interval over the chance; like that one it
 * covers at least `level`. The chances are taken as known.
 * RangeError for chances outside 0 … 1 or a count that is not whole or too large.
 * Source: Clopper and Pearson (1934), Biometrika 26, 404–413, carried over to unequal chances.
 */
export function observedOverExpected(
  observed: number,
  chances: readonly number[],
  level = 0.95,
): ObservedOverExpected {
  requireLevel('The level of an interval', level);
  requireSuccesses(observed, chances.length);
  const here = poissonBinomial(chances);
  const expected = here.mean;
  if (!(expected > 0)) {
    const why = chances.length === 0 ? 'There are no trials yet.' : 'No success is expected.';
    return { observed, expected, ratio: null, low: null, high: null, p: null, why };
  }
  const tail = (1 - level) / 2;
  const open = chances.filter((p) => p > 0 && p < 1);
  const sure = chances.filter((p) => p === 1).length;
  const seen = observed - sure;
  const meanAt = (theta: number) => sure + open.reduce((sum, p) => sum + shifted(p, theta), 0);
  const limit = (side: Side) => meanAt(shiftAtTail(open, seen, side, tail)) / expected;
  return {
    observed,
    expected,
    ratio: observed / expected,
    low: seen <= 0 ? sure / expected : limit('at least'),
    high: seen >= open.length ? (sure + open.length) / expected : limit('at most'),
    p: Math.min(1, 2 * Math.min(here.atMost(observed), here.atLeast(observed))),
    why: null,
  };
}

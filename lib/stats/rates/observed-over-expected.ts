import { requireLevel } from '@/lib/stats/arguments';
import { findRoot } from '@/lib/stats/numeric/root';
import { poissonBinomial, requireSuccesses } from './poisson-binomial';

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
  const limit = (tailAt: (theta: number) => number) =>
    meanAt(findRoot((theta) => tailAt(theta) - tail, -40, 40)) / expected;
  const at = (theta: number) => poissonBinomial(open.map((p) => shifted(p, theta)));
  return {
    observed,
    expected,
    ratio: observed / expected,
    low: seen <= 0 ? sure / expected : limit((theta) => at(theta).atLeast(seen)),
    high: seen >= open.length ? (sure + open.length) / expected : limit((theta) => at(theta).atMost(seen)),
    p: Math.min(1, 2 * Math.min(here.atMost(observed), here.atLeast(observed))),
    why: null,
  };
}

function shifted(p: number, theta: number): number {
  return theta > 0
    ? p / (p + (1 - p) * Math.exp(-theta))
    : (p * Math.exp(theta)) / (1 - p + p * Math.exp(theta));
}

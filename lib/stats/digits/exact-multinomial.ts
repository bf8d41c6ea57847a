import { logGamma } from '@/lib/stats/distributions';
import { countHalfTables, halfTables } from './half-tables';

export interface ExactMultinomial {
  /** Σ probability of all tables no likelier than the observed one. */
  byProbability: number;
  /** Σ probability of all tables whose Pearson chi-square is at least the observed one. */
  byChiSquare: number;
}

/** Above this the answer takes more than a second or two. */
const MOST_HALF_TABLES = 3_000_000;

/**
 * Exact p of counts under equal chances for every cell, in both orderings; null where the counts are so many
 * that the tables cannot be gone through (ten cells: above some 125).
 *
 * The cells are cut into two halves. A table is a pair of half tables whose totals add up to n; its
 * probability and its chi-square are sums over the halves, so the pairs beyond the observed table are
 * summed by one pass over sorted halves. Ties count, to a relative 1e-9 in probability and as whole numbers in
 * chi-square; only positive terms are added, so that small p keep their digits.
 */
export function exactMultinomial(counts: readonly number[]): ExactMultinomial | null {
  const cells = counts.length;
  const n = counts.reduce((sum, count) => sum + count, 0);
  const leftCells = Math.ceil(cells / 2);
  if (countHalfTables(leftCells, n) > MOST_HALF_TABLES) return null;
  const mean = n / cells;
  const left = halfTables(leftCells, n, mean);
  const right = leftCells * 2 === cells ? left : halfTables(cells - leftCells, n, mean);
  const rarity = counts.reduce((sum, count) => sum + logGamma(count + 1), 0);
  const squares = counts.reduce((sum, count) => sum + count * count, 0);

  let byProbability = 0;
  let byChiSquare = 0;
  left.forEach((half, total) => {
    const other = right[n - total];
    if (!other) return;
    byProbability += rarerPairs(half, other, rarity - 1e-9);
    byChiSquare += widerPairs(half.bySquares, other.bySquares, squares);
  });
  // The Poisson probability of the total turns the product of halves into the multinomial.
  const whole = Math.exp(n * Math.log(n) - n - logGamma(n + 1));
  return { byProbability: byProbability / whole, byChiSquare: byChiSquare / whole };
}

interface Sorted {
  rarity: Float64Array;
  weight: Float64Array;
}

/** Σ weight × weight over the pairs whose rarities add up to at least `least`. */
function rarerPairs(a: Sorted, b: Sorted, least: number): number {
  let sum = 0;
  let reached = b.rarity.length;
  let weight = 0;
  a.rarity.forEach((rarity, i) => {
    while (reached > 0 && rarity + (b.rarity[reached - 1] ?? 0) >= least) weight += b.weight[--reached] ?? 0;
    sum += (a.weight[i] ?? 0) * weight;
  });
  return sum;
}

/** Σ weight × weight over the pairs whose sums of squares add up to at least `least`. */
function widerPairs(a: Float64Array, b: Float64Array, least: number): number {
  let sum = 0;
  let reached = b.length;
  let weight = 0;
  a.forEach((mass, squares) => {
    while (reached > 0 && squares + reached - 1 >= least) weight += b[--reached] ?? 0;
    sum += mass * weight;
  });
  return sum;
}

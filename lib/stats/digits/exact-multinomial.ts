import gammaln from '@stdlib/math-base-special-gammaln';
import { countFillings, fillings, type Filling } from './half-tables';

export interface ExactMultinomial {
  /** Σ probability of all tables no likelier than the observed one. */
  byProbability: number;
  /** Σ probability of all tables whose Pearson chi-square is at least the observed one. */
  byChiSquare: number;
}

/** More half tables than this would take longer than a page may. */
const MOST_HALF_TABLES = 3_000_000;

/**
 * Exact p of counts under equal chances for every cell, in both orderings; null where the counts are so many
 * that the tables cannot be gone through (ten cells: above some 120).
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
  if (countFillings(leftCells, n) > MOST_HALF_TABLES) return null;
  const mean = n / cells;
  const left = fillings(leftCells, n, mean);
  const right = leftCells * 2 === cells ? left : fillings(cells - leftCells, n, mean);
  const rarity = counts.reduce((sum, count) => sum + gammaln(count + 1), 0);
  const squares = counts.reduce((sum, count) => sum + count * count, 0);
  // The Poisson probability of the total turns the product of halves into the multinomial.
  const total = Math.exp(n * Math.log(n) - n - gammaln(n + 1));
  return {
    byProbability: pairsBeyond(left, right, (half) => half.rarity, rarity - 1e-9) / total,
    byChiSquare: pairsBeyond(left, right, (half) => half.squares, squares) / total,
  };
}

/** Σ weight × weight over the pairs of complementary totals whose keys add up to at least `least`. */
function pairsBeyond(
  left: Filling[][],
  right: Filling[][],
  key: (half: Filling) => number,
  least: number,
): number {
  let sum = 0;
  left.forEach((halves, total) => {
    const rising = [...halves].sort((a, b) => key(a) - key(b));
    const falling = [...(right[right.length - 1 - total] ?? [])].sort((a, b) => key(b) - key(a));
    let reached = 0;
    let weight = 0;
    for (const half of rising) {
      for (let other = falling[reached]; other && key(half) + key(other) >= least; other = falling[reached]) {
        weight += other.weight;
        reached++;
      }
      sum += half.weight * weight;
    }
  });
  return sum;
}

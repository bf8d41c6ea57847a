import { logGamma } from '@/lib/stats/distributions';

/** All ways to fill some cells with counts of one total, each with the Poisson probability of all its orders. */
export interface HalfTables {
  /** Σ ln(count!) of each set of counts, rising: the less likely the table, the larger. */
  rarity: Float64Array;
  /** Probability of the set at the same place. */
  weight: Float64Array;
  /** Probability of all sets with a given Σ count². */
  bySquares: Float64Array;
}

/** The half tables of `cells` cells by their total, from 0 to `most`, at a Poisson mean of `mean` a cell. */
export function halfTables(cells: number, most: number, mean: number): HalfTables[] {
  const rarities = Array.from({ length: most + 1 }, (): number[] => []);
  const weights = Array.from({ length: most + 1 }, (): number[] => []);
  const bySquares = Array.from({ length: most + 1 }, (_, total) => new Float64Array(total * total + 1));
  const logFactorial = Float64Array.from({ length: Math.max(most, cells) + 1 }, (_, i) => logGamma(i + 1));
  const constant = (logFactorial[cells] ?? 0) - cells * mean;
  const logMean = Math.log(mean);

  /**
   * Adds counts that do not rise, so that each set of counts comes once. `run` is how often the last count has
   * come in a row, `orders` Σ ln(run!) over the runs closed so far.
   */
  const fill = (
    left: number,
    last: number,
    run: number,
    orders: number,
    total: number,
    rarity: number,
    squares: number,
  ) => {
    if (left === 0) {
      const weight = Math.exp(constant - orders - (logFactorial[run] ?? 0) + total * logMean - rarity);
      rarities[total]?.push(rarity);
      weights[total]?.push(weight);
      const sums = bySquares[total];
      if (sums) sums[squares] = (sums[squares] ?? 0) + weight;
      return;
    }
    for (let count = Math.min(last, most - total); count >= 0; count--) {
      const more = rarity + (logFactorial[count] ?? 0);
      if (count === last)
        fill(left - 1, count, run + 1, orders, total + count, more, squares + count * count);
      else
        fill(
          left - 1,
          count,
          1,
          orders + (logFactorial[run] ?? 0),
          total + count,
          more,
          squares + count * count,
        );
    }
  };
  fill(cells, most, 0, 0, 0, 0, 0);
  return rarities.map((list, total) => ({
    ...sorted(list, weights[total] ?? []),
    bySquares: bySquares[total] ?? new Float64Array(0),
  }));
}

/** Both lists in the order of the first. */
function sorted(rarities: number[], weights: number[]): { rarity: Float64Array; weight: Float64Array } {
  const order = Uint32Array.from(rarities, (_, i) => i).sort(
    (a, b) => (rarities[a] ?? 0) - (rarities[b] ?? 0),
  );
  const rarity = new Float64Array(order.length);
  const weight = new Float64Array(order.length);
  order.forEach((from, to) => {
    rarity[to] = rarities[from] ?? 0;
    weight[to] = weights[from] ?? 0;
  });
  return { rarity, weight };
}

/** How many half tables there are in all: sets of `cells` counts with a total of at most `most`. */
export function countHalfTables(cells: number, most: number): number {
  // As many as partitions into parts of at most `cells` (by conjugation).
  const ways = new Array<number>(most + 1).fill(0);
  ways[0] = 1;
  for (let part = 1; part <= cells; part++) {
    for (let total = part; total <= most; total++)
      ways[total] = (ways[total] ?? 0) + (ways[total - part] ?? 0);
  }
  return ways.reduce((sum, count) => sum + count, 0);
}

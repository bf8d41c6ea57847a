import gammaln from '@stdlib/math-base-special-gammaln';

/** All ways to fill some cells with a given total, as one entry for each set of counts, in any order. */
export interface Filling {
  /** Σ ln(count!): the less likely the table, the larger. */
  rarity: number;
  /** Σ count². */
  squares: number;
  /** Poisson probability, at the mean given, of these counts in all their orders. */
  weight: number;
}

/**
 * The fillings of `cells` cells, listed by their total from 0 to `most`. Counts of one filling do not rise, so
 * that each set of counts comes once; the orders are counted into the weight.
 */
export function fillings(cells: number, most: number, mean: number): Filling[][] {
  const logFactorial = Array.from({ length: Math.max(most, cells) + 1 }, (_, i) => gammaln(i + 1));
  const lists = Array.from({ length: most + 1 }, (): Filling[] => []);
  const constant = (logFactorial[cells] ?? 0) - cells * mean;

  /** `run` is how often the last count has come in a row, `orders` Σ ln(run!) over the runs closed so far. */
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
      const ways = constant - orders - (logFactorial[run] ?? 0);
      const weight = Math.exp(ways + total * Math.log(mean) - rarity);
      lists[total]?.push({ rarity, squares, weight });
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
  return lists;
}

/** How many fillings there are in all: sets of at most `cells` counts above zero with a total of at most `most`. */
export function countFillings(cells: number, most: number): number {
  // Partitions into parts of size 1 … cells, by conjugation.
  const ways = new Array<number>(most + 1).fill(0);
  ways[0] = 1;
  for (let part = 1; part <= cells; part++) {
    for (let total = part; total <= most; total++)
      ways[total] = (ways[total] ?? 0) + (ways[total - part] ?? 0);
  }
  return ways.reduce((sum, count) => sum + count, 0);
}

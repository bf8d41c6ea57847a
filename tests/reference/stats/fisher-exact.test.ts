import { describe, expect, it } from 'vitest';
import { fisherUpper } from '@/lib/stats/contingency';

/** Hypergeometric tails added up in whole numbers (Python's fractions and comb), rounded once. */
const CASES: [number, number, number, number, number][] = [
  [3, 4, 1, 4, 0.24285714285714285],
  [17, 100, 7, 641, 7.19635867832922e-11],
  [106, 106, 0, 796, 3.9615913509778346e-141],
  [5, 16, 103, 870, 0.035546292676570945],
  [0, 5, 3, 9, 1],
  [400, 1000, 300, 1000, 1.6858498536999693e-6],
];

describe("Fisher's exact test, one-sided", () => {
  it.each(CASES)('of %i of %i beside %i of %i is the sum of the tail', (x, n, y, m, p) => {
    expect(Math.abs(fisherUpper(x, n, y, m) / p - 1)).toBeLessThan(1e-9);
  });

  it('is 1 where no table is less extreme, and where there is nothing on one side', () => {
    expect(fisherUpper(0, 10, 5, 10)).toBe(1);
    expect(fisherUpper(0, 0, 3, 9)).toBe(1);
    expect(fisherUpper(4, 9, 0, 0)).toBe(1);
  });

  it('refuses counts that are not whole or more successes than trials', () => {
    expect(() => fisherUpper(5, 4, 0, 3)).toThrow(RangeError);
    expect(() => fisherUpper(0.5, 4, 0, 3)).toThrow(RangeError);
  });
});

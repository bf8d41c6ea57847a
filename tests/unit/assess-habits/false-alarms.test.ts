import { describe, expect, it } from 'vitest';
import { HABITS, habitMatrix } from '@/lib/assess/habits';
import { habitShop, habitTallies } from '@/tests/simulation/habit-shop';

/** Four hands without a habit, who differ as ordinary hands do, in each of twelve shops of 120 jobs. */
const SHOPS = 12;
const ordinary = Object.fromEntries(['A', 'B', 'C', 'D'].map((code) => [code, {}]));
const shops = Array.from({ length: SHOPS }, (_, i) =>
  habitMatrix(habitTallies(habitShop({ seed: 300 + i, jobs: 120, hands: ordinary }))),
);

describe('in shops without habits', () => {
  it.each(HABITS)('%s has a p below 0.05 no more often than that', (habit) => {
    const p = shops.flat().flatMap((cell) => (cell.habit === habit && cell.p !== null ? [cell.p] : []));
    expect(p.length).toBeGreaterThan(30);
    // Of 48 hands 2.4 are expected at most; more than 7 have a chance of one in three hundred.
    expect(p.filter((value) => value < 0.05).length).toBeLessThanOrEqual(7);
  });

  it('the tests are not so careful that small p never come', () => {
    const all = shops.flat().flatMap(({ p }) => (p === null ? [] : [p]));
    const small = all.filter((p) => p < 0.05).length / all.length;
    expect(small).toBeGreaterThan(0.008);
    expect(small).toBeLessThan(0.05);
  });

  it('hardly any shop has a finding: people and habits together', () => {
    const withFinding = shops.filter((cells) => cells.some(({ state }) => state === 'found'));
    expect(withFinding.length).toBeLessThanOrEqual(3);
  });
});

import { describe, expect, it } from 'vitest';
import { HABITS, habitMatrix } from '@/lib/assess/habits';
import { habitShop, habitTallies } from '@/tests/simulation/habit-shop';

/** Five hands without a habit, who differ as ordinary hands do, in each of fourteen shops of 150 jobs. */
const SHOPS = 14;
const ordinary = Object.fromEntries(['A', 'B', 'C', 'D', 'E'].map((code) => [code, {}]));
const shops = Array.from({ length: SHOPS }, (_, i) =>
  habitMatrix(habitTallies(habitShop({ seed: 300 + i, jobs: 150, hands: ordinary }))),
);

describe('in shops without habits', () => {
  it.each(HABITS)('%s has a p below 0.05 no more often than that', (habit) => {
    const p = shops.flat().flatMap((cell) => (cell.habit === habit && cell.p !== null ? [cell.p] : []));
    expect(p.length).toBeGreaterThan(50);
    // Of 70 hands 3.5 are expected at most; more than 9 have a chance of one in four hundred.
    expect(p.filter((value) => value < 0.05).length).toBeLessThanOrEqual(9);
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

import { describe, expect, it } from 'vitest';
import { HABITS, habitsOf } from '@/lib/assess/habits';
import { habitShop, habitTallies } from '@/tests/simulation/habit-shop';
import { PLANTED } from '@/tests/simulation/planted';

/** In each shop one hand for each habit, named after it, and three ordinary ones; 40 jobs a hand. */
const hands = Object.fromEntries([
  ...HABITS.map((habit) => [habit, PLANTED[habit].hand] as const),
  ...['o1', 'o2', 'o3'].map((code) => [code, {}] as const),
]);
const shops = [71, 72].map((seed) => {
  const shop = habitShop({ seed, jobs: 640, hands });
  return { shop, found: habitsOf(habitTallies(shop)) };
});
const all = shops.flatMap(({ found }) => found);

describe('a hand with a habit', () => {
  it.each(HABITS)('%s is found in one of two shops at least', (habit) => {
    expect(
      all.filter((one) => one.habit === habit && one.technician === habit).length,
    ).toBeGreaterThanOrEqual(1);
  });

  it('is hardly ever taken for another habit, nor is an ordinary hand: hardly one finding of twenty', () => {
    const wrong = all.filter((one) => one.habit !== one.technician);
    expect(all.length).toBeGreaterThan(22);
    expect(wrong.length).toBeLessThanOrEqual(2);
  });

  it('is told with its size, and the interval holds it', () => {
    const effect = (habit: string) =>
      all.find((one) => one.habit === habit && one.technician === habit)?.effect;
    const holds = (habit: string, size: number): void => {
      expect(effect(habit)?.low, habit).toBeLessThanOrEqual(size);
      expect(effect(habit)?.high, habit).toBeGreaterThanOrEqual(size);
    };
    holds('low-hanger', -1.5);
    holds('pointer-width', 1.5);
    holds('unequal-pointers', 55);
    holds('drift-in-round', 1);
    holds('heights-first', 0.5);
    holds('one-gauge', 2);
  });

  it('is told with setups of its own that show it', () => {
    const mine = new Set(
      shops.flatMap(({ shop }) =>
        shop.readings.map(({ job, setup, technician }) => `${technician} ${job}/${setup}`),
      ),
    );
    for (const { technician, shownBy, habit } of all) {
      expect(shownBy.length, habit).toBeGreaterThan(0);
      for (const label of shownBy) expect(mine.has(`${technician} ${label}`), `${habit} ${label}`).toBe(true);
    }
  });
});

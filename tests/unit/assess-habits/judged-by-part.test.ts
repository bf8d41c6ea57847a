import { expect, it } from 'vitest';
import {
  emptyTally,
  HABITS,
  judgeAll,
  newestOf,
  TESTS,
  type HabitTally,
  type Shown,
} from '@/lib/assess/habits';
import { addToNewest, newest } from '@/lib/assess/habits/shown';
import { habitShop, habitTallies } from '@/tests/simulation/habit-shop';
import { Random } from '@/tests/simulation/random';

const tallies = habitTallies(
  habitShop({ seed: 11, jobs: 60, hands: { A: { leftLow: 2 }, B: {}, C: {}, D: {} } }),
);

/** A tally that holds nothing but this part of another. */
const alone = (part: object): HabitTally => merged(emptyTally(), part) as HabitTally;

function merged(into: unknown, part: unknown): unknown {
  if (typeof part !== 'object' || part === null || Array.isArray(part)) return part;
  const whole = new Map(Object.entries(into ?? {}));
  for (const [key, value] of Object.entries(part)) whole.set(key, merged(whole.get(key), value));
  return Object.fromEntries(whole);
}

it.each(HABITS)('%s is judged by its part of the tallies alone', (habit) => {
  const parts = new Map([...tallies].map(([code, tally]) => [code, alone(TESTS[habit].partOf(tally))]));
  const judged = judgeAll(habit, tallies);
  expect(judgeAll(habit, parts)).toEqual(judged);
  expect([...judged.values()].some(({ p }) => p !== null)).toBe(true);
  const nothing = new Map([...tallies.keys()].map((code) => [code, emptyTally()]));
  expect(judgeAll(habit, nothing)).not.toEqual(judged);
});

it('the newest setups of many lists are those of all of them in one, whichever are in order', () => {
  const random = new Random(3);
  const lists = Array.from({ length: 40 }, (_, i) => {
    const list = Array.from({ length: Math.floor(random.uniform(0, 30)) }, (): Shown => {
      const at = Math.floor(random.uniform(0, 200));
      return { label: `J${Math.floor(random.uniform(0, 60))}`, at };
    });
    return i % 3 === 0 ? list : newest(list);
  });
  const all = newestOf(lists);
  expect(all).toEqual(newest(lists.flat()));
  expect(all).toHaveLength(50);
  expect(newestOf(lists.slice(0, 2), 5)).toEqual(newest(lists.slice(0, 2).flat(), 5));
});

it('the newest setups are the same where they come one by one', () => {
  const random = new Random(4);
  for (let i = 0; i < 200; i++) {
    const list = Array.from({ length: Math.floor(random.uniform(0, 12)) }, (): Shown => {
      const at = Math.floor(random.uniform(0, 9));
      return { label: `J${Math.floor(random.uniform(0, 6))}`, at };
    });
    const oneByOne: Shown[] = [];
    for (const one of list) addToNewest(oneByOne, one, 3);
    expect(oneByOne).toEqual(newest(list, 3));
  }
});

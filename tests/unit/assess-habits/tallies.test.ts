import { describe, expect, it } from 'vitest';
import {
  addTallies,
  emptyTally,
  firstReadings,
  habitMatrix,
  HABITS,
  sumByTechnician,
  tallyHabits,
} from '@/lib/assess/habits';
import { MOST_SHOWN } from '@/lib/assess/habits/shown';
import { grouped } from '@/lib/measure/grouped';
import { habitShop } from '@/tests/simulation/habit-shop';
import { tallyShop } from '@/tests/simulation/tally-shop';

const shop = habitShop({ seed: 3, jobs: 24, hands: { A: {}, B: { leftLow: 2 }, C: {} } });
const firsts = firstReadings(shop.readings);
const byJob = grouped(shop.verdicts, ({ job }) => job);
const tallies = shop.jobs.flatMap((job) => [
  ...tallyHabits(job, byJob.get(job.job) ?? [], firsts.get(job.job)),
]);
const of = (technician: string) => tallies.flatMap(([name, tally]) => (name === technician ? [tally] : []));

describe('tallies of habits', () => {
  it('add up to the same whatever the grouping, so that a rollup of months serves as well as the jobs', () => {
    const own = of('A');
    const whole = addTallies(own);
    const halves = addTallies([addTallies(own.slice(0, 3)), addTallies(own.slice(3))]);
    expect(halves.shown).toEqual(whole.shown);
    expect(halves.rounds).toEqual(whole.rounds);
    expect(halves.near).toEqual(whole.near);
    expect(halves.means['low-hanger'].all.ss).toBeCloseTo(whole.means['low-hanger'].all.ss, 9);
    expect(whole.jobs).toBe(8);
  });

  it('survive JSON, and stay small: no list grows with the readings', () => {
    const whole = addTallies(of('B'));
    expect(JSON.parse(JSON.stringify(whole))).toEqual(whole);
    for (const setups of Object.values(whole.shown)) expect(setups.length).toBeLessThanOrEqual(MOST_SHOWN);
    expect(Math.max(...of('B').map((tally) => JSON.stringify(tally).length))).toBeLessThan(8_000);
  });

  it('tell the same to the last digit in whatever order a database gives their fields back', () => {
    const backwards = <Of>(by: Record<string, Of>): Record<string, Of> =>
      Object.fromEntries(Object.entries(by).reverse());
    const turned = tallies.map(([technician, tally]): [string, typeof tally] => {
      const means = structuredClone(tally.means);
      for (const mean of Object.values(means)) mean.by = backwards(mean.by);
      return [technician, { ...tally, means, places: backwards(tally.places) }];
    });
    const matrix = (all: typeof tallies) => habitMatrix(sumByTechnician(all.map((one) => new Map([one]))));
    expect(Object.keys(turned[0]?.[1].places ?? {})).not.toEqual(Object.keys(tallies[0]?.[1].places ?? {}));
    expect(JSON.stringify(matrix(turned))).toBe(JSON.stringify(matrix(tallies)));
  });

  it('keep the newest setups', () => {
    const at = (n: number) => ({ ...emptyTally(), shown: { drift: [{ label: `J/${n}`, at: n }] } });
    const sum = addTallies(Array.from({ length: 70 }, (_, n) => at(n)));
    expect(sum.shown.drift?.map(({ label }) => label).slice(0, 2)).toEqual(['J/69', 'J/68']);
    expect(sum.shown.drift).toHaveLength(MOST_SHOWN);
  });

  it('of another format are refused', () => {
    expect(() => addTallies([{ ...emptyTally(), format: 0 }])).toThrow(/Make it again/);
  });

  it('of a shop are the same whatever the order of its readings', () => {
    const mixed = [...shop.readings].reverse();
    expect(tallyShop(shop.jobs, shop.verdicts, firstReadings(mixed))).toEqual(
      tallyShop(shop.jobs, shop.verdicts, firsts),
    );
  });
});

describe('the matrix', () => {
  it('has a cell for every technician and habit, with an effect within its interval or a reason', () => {
    const cells = habitMatrix(tallyShop(shop.jobs, shop.verdicts, firsts));
    expect(cells).toHaveLength(3 * HABITS.length);
    for (const { technician, habit, p, adjustedP, effect, evidence, state } of cells) {
      expect(evidence, `${technician} ${habit}`).toMatch(/\.$/);
      if (p === null || effect === null || adjustedP === null) {
        expect(state).toBe('too few readings');
        continue;
      }
      expect(adjustedP).toBeGreaterThanOrEqual(p);
      expect(effect.low).toBeLessThanOrEqual(effect.value + 1e-9);
      expect(effect.high).toBeGreaterThanOrEqual(effect.value - 1e-9);
    }
  });

  it('is empty of findings for an empty shop, and for a technician alone asks only what needs no others', () => {
    expect(habitMatrix(new Map())).toEqual([]);
    const alone = habitMatrix(new Map([['B', addTallies(of('B'))]]));
    const tested = alone.filter(({ p }) => p !== null).map(({ habit }) => habit);
    expect(tested).toContain('low-hanger');
    expect(tested).not.toContain('no-rehang');
    expect(alone.find(({ habit }) => habit === 'no-rehang')?.evidence).toBe(
      'There are no other hands to compare with.',
    );
  });

  it('calls what a newcomer has hardly done too few readings, not the absence of a habit', () => {
    const few = habitMatrix(tallyShop(shop.jobs.slice(0, 4), shop.verdicts, firsts));
    expect(few.filter(({ state }) => state === 'not found').length).toBeLessThan(few.length / 2);
  });
});

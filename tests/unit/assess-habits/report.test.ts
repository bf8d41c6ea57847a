import { describe, expect, it } from 'vitest';
import { firstReadings, habitsFound } from '@/lib/assess/habits';
import { tallyShop } from '@/tests/simulation/tally-shop';
import { habitShop } from '@/tests/simulation/habit-shop';

const shop = habitShop({
  seed: 12,
  jobs: 120,
  hands: { A: {}, B: { halves: 0.7 }, C: {}, D: { leftLow: 2.5 } },
});

describe('habits in the report', () => {
  it('stand with their technician: key, strength, a sentence and setups', () => {
    const habits = habitsFound(tallyShop(shop.jobs, shop.verdicts, firstReadings(shop.readings)));
    const found = [...habits].filter(([, list]) => list.length > 0).map(([technician]) => technician);
    expect(found.sort()).toEqual(['B', 'D']);
    const [digits] = habits.get('B') ?? [];
    expect(digits?.habit).toBe('preferred-digits');
    expect(digits?.evidence).toMatch(/readings in tenths end in 0 or 5/);
    const [low] = habits.get('D') ?? [];
    expect(low?.habit).toBe('low-hanger');
    // Found at an adjusted p of 0.05 at most.
    expect(low?.strength).toBeGreaterThan(1.3);
    expect(low?.setups[0]).toMatch(/^J\d{5}\/[AB]1-\d\d$/);
  });

  it('need first readings only for last digits: the collapsed jobs alone show the others, and single readings', () => {
    const habits = habitsFound(tallyShop(shop.jobs, shop.verdicts));
    expect(habits.get('D')?.map(({ habit }) => habit)).toContain('low-hanger');
    expect(habits.get('B')?.map(({ habit }) => habit)).toContain('preferred-digits');
  });
});

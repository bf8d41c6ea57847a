import { describe, expect, it } from 'vitest';
import { MeasuredSums } from '@/lib/assess';
import { startingPoint } from '@/lib/assess/cause/learned';
import { collapse } from '@/lib/measure';
import { dueToLearn } from '@/lib/refresh/due-to-learn';
import { regularShop } from '@/tests/unit/store/invented-readings';

const HOUR = 60 * 60_000;
const measured = MeasuredSums.of(collapse(regularShop(1)));

/** Learned at midnight from a thousand rounds, of `T0` and four gauges. */
function fit() {
  const learned = startingPoint();
  learned.rounds = 1000;
  learned.technicians = { T0: { ...learned.newTechnician, setups: 100 } };
  learned.gauges = Object.fromEntries(['C0', 'C1', 'C2', 'C3'].map((tag) => [tag, { ...learned.newGauge }]));
  return { learned, learnedAt: 0, unlearned: 0 };
}

describe('what was learned serves new rounds', () => {
  it('as long as they are no more than two in a hundred, those before them counted', () => {
    expect(dueToLearn(fit(), { rounds: 20, measured }, HOUR)).toBe(false);
    expect(dueToLearn(fit(), { rounds: 21, measured }, HOUR)).toBe(true);
    expect(dueToLearn({ ...fit(), unlearned: 15 }, { rounds: 5, measured }, HOUR)).toBe(false);
    expect(dueToLearn({ ...fit(), unlearned: 15 }, { rounds: 6, measured }, HOUR)).toBe(true);
  });

  it('for a day', () => {
    expect(dueToLearn(fit(), { rounds: 1, measured }, 23 * HOUR)).toBe(false);
    expect(dueToLearn(fit(), { rounds: 1, measured }, 25 * HOUR)).toBe(true);
  });

  it('of people and gauges that something was learned of', () => {
    const nobody = fit();
    nobody.learned.technicians = {};
    expect(dueToLearn(nobody, { rounds: 1, measured }, HOUR)).toBe(true);
    const neverHung = fit();
    neverHung.learned.technicians.T0 = { ...neverHung.learned.newTechnician, setups: 0 };
    expect(dueToLearn(neverHung, { rounds: 1, measured }, HOUR)).toBe(true);
    const noGauge = fit();
    delete noGauge.learned.gauges.C2;
    expect(dueToLearn(noGauge, { rounds: 1, measured }, HOUR)).toBe(true);
  });
});

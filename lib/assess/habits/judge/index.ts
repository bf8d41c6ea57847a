import type { HabitKey, MeanHabit, RoundHabit } from '../keys';
import type { HabitTally } from '../tally';
import { amongAlike, judgeAlike } from './alike';
import { judgeDigits } from './digits';
import { aroundMiddle, judgeDrawn } from './drawn';
import { judgeDrift } from './drift';
import { judgeRounds, type RoundsOf } from './in-rounds';
import type { MeansOf } from './judgement';
import { judgeLowHanger } from './low-hanger';
import { judgeNoRehang } from './no-rehang';
import { amongGauges, judgeOneGauge } from './one-gauge';
import { judgePointerWidth, judgeUnequalPointers } from './pointers';
import { type HabitTest, testOf } from './test-of';

export type { EffectUnit, HabitEffect, Judgement } from './judgement';
export type { HabitTest } from './test-of';

const inRounds = (habit: RoundHabit): HabitTest =>
  testOf(
    ({ rounds }): RoundsOf<RoundHabit> => ({ rounds: picked(rounds, habit) }),
    same,
    (technician, hands) => judgeRounds(habit, technician, hands),
  );

const meansOf =
  <Habit extends MeanHabit>(...habits: readonly Habit[]) =>
  ({ means }: HabitTally): MeansOf<Habit> => ({ means: picked(means, ...habits) });

const picked = <All extends object, Key extends keyof All>(all: All, ...keys: readonly Key[]) =>
  Object.fromEntries(keys.map((key) => [key, all[key]])) as Pick<All, Key>;

const same = <Part>(parts: ReadonlyMap<string, Part>): ReadonlyMap<string, Part> => parts;

/** The test behind each habit. */
export const TESTS: Record<HabitKey, HabitTest> = {
  'clearance-forgotten': inRounds('clearance-forgotten'),
  'another-mark': inRounds('another-mark'),
  'careless-zero': inRounds('careless-zero'),
  'low-hanger': testOf(meansOf('low-hanger'), same, judgeLowHanger),
  'preferred-digits': testOf(
    ({ digits, repeats }) => ({ digits, repeats: picked(repeats, 'halves') }),
    same,
    judgeDigits,
  ),
  'drawn-to-sheet': testOf(({ near }) => ({ near }), aroundMiddle, judgeDrawn),
  'repeats-alike': testOf(
    ({ repeats, digits: { heaped } }) => ({ repeats, digits: { heaped } }),
    amongAlike,
    judgeAlike,
  ),
  'no-rehang': testOf(meansOf('no-rehang'), same, judgeNoRehang),
  'heights-first': inRounds('heights-first'),
  'drift-in-round': testOf(meansOf('drift-in-round'), same, judgeDrift),
  'unequal-pointers': testOf(meansOf('unequal-pointers'), same, judgeUnequalPointers),
  'pointer-width': testOf(
    (tally) => ({ ...meansOf('unequal-pointers', 'pointer-width')(tally), lengths: tally.lengths }),
    same,
    judgePointerWidth,
  ),
  'one-gauge': testOf(
    (tally) => ({ ...meansOf('one-gauge', 'drift-in-round')(tally), places: tally.places }),
    amongGauges,
    judgeOneGauge,
  ),
};

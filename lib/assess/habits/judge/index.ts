import type { HabitKey } from '../keys';
import { judgeAlike } from './alike';
import { judgeDigits } from './digits';
import { judgeDrawn } from './drawn';
import { judgeDrift } from './drift';
import { judgeRounds } from './in-rounds';
import type { Judge } from './judgement';
import { judgeLowHanger } from './low-hanger';
import { judgeNoRehang } from './no-rehang';
import { judgeOneGauge } from './one-gauge';
import { judgePointerWidth, judgeUnequalPointers } from './pointers';

export { prepare } from './prepare';
export type { EffectUnit, HabitEffect, Hands, Judge, Judgement } from './judgement';

/** The test behind each habit. */
export const JUDGES: Record<HabitKey, Judge> = {
  'clearance-forgotten': (technician, hands) => judgeRounds('clearance-forgotten', technician, hands),
  'another-mark': (technician, hands) => judgeRounds('another-mark', technician, hands),
  'careless-zero': (technician, hands) => judgeRounds('careless-zero', technician, hands),
  'low-hanger': judgeLowHanger,
  'preferred-digits': judgeDigits,
  'drawn-to-sheet': judgeDrawn,
  'repeats-alike': judgeAlike,
  'no-rehang': judgeNoRehang,
  'heights-first': (technician, hands) => judgeRounds('heights-first', technician, hands),
  'drift-in-round': judgeDrift,
  'unequal-pointers': judgeUnequalPointers,
  'pointer-width': judgePointerWidth,
  'one-gauge': judgeOneGauge,
};

/**
 * Habits found in the readings. Tally each job (`tallyHabits`), add tallies up (`addTallies`; one sum for each
 * technician: `sumByTechnician`), and ask (`habitMatrix`, `habitsOf`).
 */
export { firstReadings, firstKey, type FirstReadings } from './first-readings';
export { HABITS, type HabitKey } from './keys';
export {
  FALSE_ALARM_RATE,
  type HabitCell,
  type HabitFinding,
  habitMatrix,
  habitsOf,
  type HabitState,
  judgeAll,
  type MatrixWork,
} from './habit-matrix';
export { type EffectUnit, type HabitEffect, TESTS } from './judge';
export { foundOf, habitsFound, sumByTechnician } from './shop-habits';
export { newestOf, type Shown } from './shown';
export { type ShownApart, ShownSums } from './shown-apart';
export { addCountsOf, addTallies, emptyTally, HABIT_TALLY_FORMAT, type HabitTally } from './tally';
export { tallyHabits } from './tally-habits';
export { HABIT_TEXTS, type HabitText } from './texts';

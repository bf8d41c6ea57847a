/** Every habit that is looked for, by its stable key: what reports, tallies and addresses call it. */
export const HABITS = [
  'clearance-forgotten',
  'another-mark',
  'careless-zero',
  'low-hanger',
  'preferred-digits',
  'drawn-to-sheet',
  'repeats-alike',
  'no-rehang',
  'heights-first',
  'drift-in-round',
  'unequal-pointers',
  'pointer-width',
  'one-gauge',
] as const;
export type HabitKey = (typeof HABITS)[number];

/** Habits that a round either shows or does not. */
export const ROUND_HABITS = [
  'clearance-forgotten',
  'another-mark',
  'careless-zero',
  'heights-first',
] as const;
export type RoundHabit = (typeof ROUND_HABITS)[number];

/** Habits that show in a mean over jobs. */
export const MEAN_HABITS = [
  'low-hanger',
  'no-rehang',
  'drift-in-round',
  'unequal-pointers',
  'pointer-width',
  'one-gauge',
] as const;
export type MeanHabit = (typeof MEAN_HABITS)[number];

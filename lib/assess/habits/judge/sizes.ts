/**
 * Sizes that are worth training, in each habit's unit. No test uses them: they decide only whether a habit that was not
 * found could have been ('not found') or could hardly have been ('too few readings').
 */
export const WORTH_TRAINING = {
  'clearance-forgotten': 0.25,
  'another-mark': 0.15,
  'careless-zero': 0.35,
  'heights-first': 0.5,
  'low-hanger': 1.5,
  'no-rehang': 0.9,
  'drift-in-round': 0.6,
  'unequal-pointers': 1.8,
  'pointer-width': 1.5,
  'one-gauge': 1.5,
  'preferred-digits': 0.5,
  'drawn-to-sheet': 0.15,
  'repeats-alike': 0.4,
} as const;

/** A habit could have been seen where its size would give a p below this. */
export const SEEN = 0.005;

/** The number of standard errors that belongs to `SEEN`, two-sided. */
export const SEEN_Z = 2.807;

/**
 * By how much ordinary hands differ as a rule, as standard deviations on the scale of each comparison: ln of odds,
 * ln of a ratio, millimetres, a share. A weak prior (see `againstOthers`): the shop's own hands outweigh it.
 */
export const HANDS_DIFFER = {
  rounds: 0.5,
  mm: 0.15,
  slope: 0.1,
  pointers: 0.1,
  rehangs: 0.08,
  digits: 0.25,
  near: 0.08,
  alike: 0.25,
  scatter: 0.6,
} as const;

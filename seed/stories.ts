/**
 * What happened in the demo shop's year, and when; stories.md tells it. Dates are days in the shop's time zone.
 */
export const SHOP_NAME = 'Thistledown Quay Body Works';
export const TIME_ZONE = 'Europe/Vienna';
export const FIRST_DAY = '2025-11-17';
export const LAST_DAY = '2026-11-13';
export const FIRST_JOB_NUMBER = 4101;
export const JOBS = 360;

/** Tibor Quillow's training: from this day on his hand is another. */
export const TRAINING_DAY = '2026-05-04';
/** Gauge CG4 fell off the bench; nobody said so. */
export const DROPPED_DAY = '2026-06-09';
/** CG4 was verified, found bent, mended and verified again. */
export const MENDED_DAY = '2026-07-14';
/** Clamps of the pulling bench slipped: vehicles went out of it with damage left in them. */
export const SLUMP_FROM = '2026-09-01';
export const SLUMP_TO = '2026-10-01';
/** From this day on Noor Larkspindle reads the scale from above its mark, not level with it: her heights read low. */
export const FROM_ABOVE_DAY = '2026-07-06';
/** Edda Beckonridge's first day. */
export const NEWCOMER_DAY = '2026-10-05';

/** Share of damaged vehicles with damage left in after the first repair: usually, and in the slump. */
export const LEFTOVER = 0.08;
export const LEFTOVER_IN_SLUMP = 0.85;

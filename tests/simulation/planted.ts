import type { HabitKey } from '@/lib/assess/habits';
import type { HandHabits } from './habit-shop';

/** A hand for each habit, of the size that DEVELOPERS.md states the power for, and one of half the size. */
export const PLANTED: Record<HabitKey, { size: string; hand: HandHabits; half: HandHabits }> = {
  'clearance-forgotten': {
    size: '5 of 100 setups',
    hand: { forgetsClearance: 0.05 },
    half: { forgetsClearance: 0.025 },
  },
  'another-mark': { size: '5 of 100 setups', hand: { otherMark: 0.05 }, half: { otherMark: 0.025 } },
  'careless-zero': {
    size: '30 of 100 zero setups, others 4',
    hand: { carelessZero: 0.3 },
    half: { carelessZero: 0.15 },
  },
  'low-hanger': { size: '1.5 mm', hand: { leftLow: 1.5 }, half: { leftLow: 0.75 } },
  'preferred-digits': {
    size: '40 of 100 readings to the coarser step',
    hand: { halves: 0.4 },
    half: { halves: 0.2 },
  },
  'drawn-to-sheet': { size: '40 of 100 within 1 mm', hand: { drawn: 0.4 }, half: { drawn: 0.2 } },
  'repeats-alike': { size: '30 of 100 repeats copied', hand: { copied: 0.3 }, half: { copied: 0.15 } },
  'no-rehang': {
    size: '5 of 100 hung again, others 50 (half: 28)',
    hand: { rehangs: 0.05 },
    half: { rehangs: 0.275 },
  },
  'heights-first': {
    size: '50 of 100 rounds, others 4',
    hand: { heightsFirst: 0.5 },
    half: { heightsFirst: 0.25 },
  },
  'drift-in-round': { size: '1 mm a setup', hand: { drift: 1 }, half: { drift: 0.5 } },
  'unequal-pointers': {
    size: '55 mm (half the error: 39)',
    hand: { unequalPointers: 55 },
    half: { unequalPointers: 39 },
  },
  'pointer-width': { size: '1.5 mm', hand: { pointerWidth: 1.5 }, half: { pointerWidth: 0.75 } },
  'one-gauge': {
    size: '2 mm',
    hand: { withGauge: { gauge: 'C1', more: 2 } },
    half: { withGauge: { gauge: 'C1', more: 1 } },
  },
};

import type { HabitKey } from '@/lib/assess/habits';
import type { HandHabits } from './habit-shop';

/** A hand for each habit, of the size that DEVELOPERS.md states the power for. */
export const PLANTED: Record<HabitKey, { size: string; hand: HandHabits }> = {
  'clearance-forgotten': { size: 'in 5 of 100 setups', hand: { forgetsClearance: 0.05 } },
  'another-mark': { size: 'in 5 of 100 setups', hand: { otherMark: 0.05 } },
  'careless-zero': { size: '30 of 100 zero setups', hand: { carelessZero: 0.3 } },
  'low-hanger': { size: '1.5 mm', hand: { leftLow: 1.5 } },
  'preferred-digits': { size: '40 of 100 readings in halves', hand: { halves: 0.4 } },
  'drawn-to-sheet': { size: '40 of 100 within 1 mm', hand: { drawn: 0.4 } },
  'repeats-alike': { size: '30 of 100 repeats copied', hand: { copied: 0.3 } },
  'no-rehang': { size: '5 of 100 hung again, others 50', hand: { rehangs: 0.05 } },
  'heights-first': { size: 'half of the rounds', hand: { heightsFirst: 0.5 } },
  'drift-in-round': { size: '1 mm a setup', hand: { drift: 1 } },
  'unequal-pointers': { size: '55 mm', hand: { unequalPointers: 55 } },
  'pointer-width': { size: '1.5 mm', hand: { pointerWidth: 1.5 } },
  'one-gauge': { size: '2 mm', hand: { withGauge: { gauge: 'C1', more: 2 } } },
};

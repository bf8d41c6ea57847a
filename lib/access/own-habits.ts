import type { HabitsAnswer } from '@/lib/assess/answers';

/** With fewer hands, what the shop shows beside one's own is what one colleague shows. */
export const LEAST_HANDS = 3;

/** A technician's own habits; what the other hands show stays out where it would be a colleague's figure. */
export function ownHabits(cells: HabitsAnswer, code: string): HabitsAnswer {
  const own = cells.filter(({ technician }) => technician === code);
  if (new Set(cells.map(({ technician }) => technician)).size >= LEAST_HANDS) return own;
  return own.map((cell) => ({
    ...cell,
    effect: cell.effect && { ...cell.effect, reference: null },
    evidence: `The numbers of the other hands are left out: with fewer than ${LEAST_HANDS} technicians they would be a colleague’s.`,
  }));
}

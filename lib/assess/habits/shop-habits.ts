import { grouped } from '@/lib/measure/grouped';
import type { Habit } from '../types';
import { habitMatrix, type HabitCell } from './habit-matrix';
import { addTallies, type HabitTally } from './tally';

/** One sum for each technician, in the order of their codes. */
export function sumByTechnician(parts: readonly ReadonlyMap<string, HabitTally>[]): Map<string, HabitTally> {
  const byTechnician = grouped(
    parts.flatMap((part) => [...part]),
    ([technician]) => technician,
  );
  return new Map(
    [...byTechnician]
      .sort(([a], [b]) => (a < b ? -1 : 1))
      .map(([technician, own]) => [technician, addTallies(own.map(([, tally]) => tally))]),
  );
}

/** Habits found in a shop, by technician, strongest evidence first. */
export function habitsFound(tallies: ReadonlyMap<string, HabitTally>): Map<string, Habit[]> {
  const cells = habitMatrix(tallies);
  return new Map([...tallies.keys()].map((technician) => [technician, foundOf(cells, technician)]));
}

/** What was found of one technician, strongest evidence first, as the report tells it. */
export function foundOf(cells: readonly HabitCell[], technician: string): Habit[] {
  return cells
    .flatMap(({ habit, state, strength, evidence, shownBy, ...cell }) =>
      state === 'found' && strength !== null && cell.technician === technician
        ? [{ habit, strength, evidence, setups: shownBy }]
        : [],
    )
    .sort((a, b) => b.strength - a.strength);
}

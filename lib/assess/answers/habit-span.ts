import { grouped } from '@/lib/measure/grouped';
import { addTallies, habitMatrix, type HabitCell } from '../habits';
import type { HabitMonth } from './month-sums';

/** Every technician by every habit, from the sums of some months alone. */
export function habitSpan(months: readonly HabitMonth[]): HabitCell[] {
  const byTechnician = grouped(months.flat(), ([technician]) => technician);
  return habitMatrix(
    new Map(
      [...byTechnician]
        .sort(([a], [b]) => (a < b ? -1 : 1))
        .map(([technician, own]) => [technician, addTallies(own.map(([, tally]) => tally))]),
    ),
  );
}

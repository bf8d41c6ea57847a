import { HABITS, type HabitCell, type HabitKey } from '@/lib/assess/habits';
import { frozen, onceFor } from '@/lib/memory';

/** Codes in their order: no habit makes one technician come before another. */
export const inOrder = (a: string, b: string): number => a.localeCompare(b, 'en', { numeric: true });

export interface HabitsOf {
  technician: string;
  cells: readonly HabitCell[];
}

/** The cells by technician, in the order of codes, each with the habits in their own order. */
export const byTechnician = onceFor((cells: readonly HabitCell[]): readonly HabitsOf[] => {
  const codes = [...new Set(cells.map(({ technician }) => technician))].sort(inOrder);
  return frozen(
    codes.map((technician) => ({
      technician,
      cells: cells
        .filter((cell) => cell.technician === technician)
        .sort((a, b) => HABITS.indexOf(a.habit) - HABITS.indexOf(b.habit)),
    })),
  );
});

/** One habit in every technician, in the order of codes. */
export const ofHabit = (cells: readonly HabitCell[], habit: HabitKey): HabitCell[] =>
  cells.filter((cell) => cell.habit === habit).sort((a, b) => inOrder(a.technician, b.technician));

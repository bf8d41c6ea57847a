import { inOrder } from '@/app/_words/in-order';
import { HABITS, type HabitCell, type HabitKey } from '@/lib/assess/habits';
import { frozen, onceFor } from '@/lib/memory';

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
export const ofHabit = onceFor((cells: readonly HabitCell[], habit: HabitKey): readonly HabitCell[] =>
  frozen(cells.filter((cell) => cell.habit === habit).sort((a, b) => inOrder(a.technician, b.technician))),
);

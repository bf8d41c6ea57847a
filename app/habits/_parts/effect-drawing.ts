import type { Drawing } from '@/app/_figures/drawing/drawing';
import { intervalDrawing } from '@/app/_figures/interval-drawing';
import { effectHead, effectName, effectTick, effectValue } from '@/app/_words/habits';
import type { EffectUnit, HabitCell } from '@/lib/assess/habits';
import { effectAxis } from './effect-axis';

/** The units that figures of one habit come in, in the order met: those in different units share no axis. */
export const unitsOf = (cells: readonly HabitCell[]): EffectUnit[] => [
  ...new Set(cells.flatMap(({ effect }) => effect?.unit ?? [])),
];

/** One habit in every technician as a chart: each figure with its interval, and what is usual without the habit. */
export function effectDrawing(cells: readonly HabitCell[], unit: EffectUnit): Drawing {
  const shown = cells.filter(({ effect }) => effect === null || effect.unit === unit);
  const effects = shown.flatMap(({ effect }) => effect ?? []);
  const [first] = shown;
  return intervalDrawing({
    what: `${first === undefined ? 'Habit' : effectName(first.habit)}, ${effectHead(unit).toLowerCase()}`,
    axis: effectAxis(effects, unit),
    intervals: shown.map(({ technician, effect }) => ({
      name: technician,
      value: effect?.value ?? null,
      low: effect?.low ?? null,
      high: effect?.high ?? null,
      reference: effect?.reference ?? null,
      why: 'no figure yet',
    })),
    print: (value) => effectValue(value, unit),
    tick: (tick) => effectTick(tick, unit),
  });
}

import type { Drawing } from '@/app/_figures/drawing/drawing';
import { intervalDrawing } from '@/app/_figures/interval-drawing';
import { effectHead, effectName, effectTick, effectValue } from '@/app/_words/habits';
import { speech } from '@/app/_words/speech';
import { words } from '@/app/_words/words';
import type { EffectUnit, HabitCell } from '@/lib/assess/habits';
import { effectAxis } from './effect-axis';

/** The units that figures of one habit come in, in the order met: those in different units share no axis. */
export const unitsOf = (cells: readonly HabitCell[]): EffectUnit[] => [
  ...new Set(cells.flatMap(({ effect }) => effect?.unit ?? [])),
];

/** The head of a column within a sentence: English writes it small, German keeps its nouns. */
const headInSentence = (unit: EffectUnit): string =>
  speech().language === 'en' ? effectHead(unit).toLowerCase() : effectHead(unit);

/** One habit in every technician as a chart: each figure with its interval, and what is usual without the habit. */
export function effectDrawing(cells: readonly HabitCell[], unit: EffectUnit): Drawing {
  const shown = cells.filter(({ effect }) => effect === null || effect.unit === unit);
  const effects = shown.flatMap(({ effect }) => effect ?? []);
  const t = words('habits');
  const [first] = shown;
  const head = headInSentence(unit);
  return intervalDrawing({
    what:
      first === undefined
        ? t('picture.whatHabit', { head })
        : t('picture.what', { name: effectName(first.habit), head }),
    axis: effectAxis(effects, unit),
    intervals: shown.map(({ technician, effect }) => ({
      name: technician,
      value: effect?.value ?? null,
      low: effect?.low ?? null,
      high: effect?.high ?? null,
      reference: effect?.reference ?? null,
      why: t('picture.noFigure'),
    })),
    print: (value) => effectValue(value, unit),
    tick: (tick) => effectTick(tick, unit),
  });
}

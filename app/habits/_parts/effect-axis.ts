import { axisOver, type Axis } from '@/app/_figures/axis';
import { isShare } from '@/app/_words/habits';
import type { EffectUnit, HabitEffect } from '@/lib/assess/habits';

/** An interval may run this many times beyond the farthest figure before the axis stops following it. */
const BEYOND = 2;

/** One axis for the effects of a unit: wide enough for all figures and nearly all intervals, the neutral value on it. */
export function effectAxis(effects: readonly HabitEffect[], unit: EffectUnit): Axis {
  const figures = effects.flatMap(({ value, reference }) =>
    reference === null ? [value] : [value, reference],
  );
  const ends = effects.flatMap(({ low, high }) => [low, high]);
  const farthest = Math.max(least(unit), ...figures.map(Math.abs)) * BEYOND;
  const most = isShare(unit) ? 1 : Infinity;
  const held = ends.map((end) => Math.min(most, farthest, Math.max(-farthest, end)));
  return axisOver([...figures, ...held], 0, least(unit), 4);
}

/** However small the figures are, the axis reaches this far: else noise fills it. */
const least = (unit: EffectUnit): number => (isShare(unit) ? 0.1 : unit === 'ratio' ? 1.2 : 0.5);

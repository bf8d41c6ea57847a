import { bareMillimetres, signed } from '@/app/_words/numbers';
import { axisOver, type Axis } from './axis';

/** What is estimated: a standard deviation is never below zero, a bias has a sign. */
export type EstimateKind = 'sd' | 'bias';

interface Ends {
  low: number | null;
  high: number | null;
}

/** Wide enough for nearly all intervals; a very uncertain one runs on beyond the end, as its arrow says. */
export function estimateAxis(
  estimates: readonly (Ends & { value: number | null })[],
  kind: EstimateKind,
  band: Ends | undefined,
): Axis {
  const values = estimates.flatMap((one) => (one.value === null ? [] : [one.value]));
  const ends = [...estimates.flatMap((one) => [one.low, one.high]), band?.low, band?.high].filter(
    (end) => typeof end === 'number',
  );
  const farthest = Math.max(0.1, ...values.map((value) => Math.abs(value) * 2));
  const reach = Math.min(Math.max(0.1, ...ends.map(Math.abs)), farthest * 1.5);
  return kind === 'bias' ? axisOver([], -reach, reach, 4) : axisOver([], 0, reach, 4);
}

/** A tick as the axis needs it: no more digits than its steps have. */
export const estimateTick = (tick: number, kind: EstimateKind, axis: Axis): string =>
  kind === 'bias' ? signed(tick, decimals(axis)) : bareMillimetres(tick, decimals(axis));

function decimals(axis: Axis): number {
  return axis.ticks.every((tick) => Number.isInteger(tick))
    ? 0
    : axis.ticks.every((tick) => Number.isInteger(Math.round(tick * 1e6) / 1e5))
      ? 1
      : 2;
}

import type { GaugeKind } from '@/lib/measure/types';
import type { StepClass } from '../tally';

/** Step of each class and the coarser one that hands fall into, mm. */
export const STEPS: Record<StepClass, { fine: number; coarse: number }> = {
  tenths: { fine: 0.1, coarse: 0.5 },
  halves: { fine: 0.5, coarse: 1 },
  whole: { fine: 1, coarse: 5 },
};

/** What a kind of gauge is read in: a vernier or a display shows tenths, a scale halves, a tape whole millimetres. */
const CLASS_OF: Record<GaugeKind, StepClass> = {
  centering: 'tenths',
  'digital-tram': 'tenths',
  tram: 'halves',
  tracking: 'halves',
  strut: 'halves',
  tape: 'whole',
};

export const stepClass = (kind: GaugeKind | null): StepClass => (kind === null ? 'tenths' : CLASS_OF[kind]);

/** Whether a value lies on a grid, up to the rounding of decimals. */
export function isOn(value: number, step: number): boolean {
  const steps = value / step;
  return Math.abs(steps - Math.round(steps)) < 1e-6;
}

/** Remainder between 0 and `by` − 1 of a whole number, negative ones included. */
export const remainder = (value: number, by: number): number => ((Math.round(value) % by) + by) % by;

import type { GaugeKind } from '@/lib/measure';

/** A gauge as it really is; `errors` rise in time and the first begins its service. */
export interface GaugeModel {
  tag: string;
  kind: GaugeKind;
  /** Length from the pointer's tip to the fixed mark, mm; null where the kind has none. */
  fixedMark: number | null;
  /** What the gauge reads too much, mm. */
  errors: readonly { from: number; error: number }[];
}

/** What the gauge reads too much at a time, mm. */
export function gaugeError(gauge: GaugeModel, at: number): number {
  return gauge.errors.findLast((period) => period.from <= at)?.error ?? 0;
}

/** Steps that a kind is read in, mm: digital and centering gauges carry a vernier, the others half millimetres. */
export const RESOLUTION: Record<GaugeKind, number> = {
  tram: 0.5,
  'digital-tram': 0.1,
  tracking: 0.5,
  centering: 0.1,
  strut: 0.5,
  tape: 1,
};

/** A tape sags and slips: its readings scatter this many times as much as a gauge's in the same hand. */
export const TAPE_SCATTER = 3;

import { collapse, type Dimension, type Observation, type Reading, type Stage } from '@/lib/measure';

/** A stored reading, as far as its value goes. */
export interface StoredValue {
  repeat: number;
  value: number;
  takenAt: number;
}

/** Where stored readings stand, as far as a file would tell it on each line. */
export interface Place {
  job: string;
  sheet: string | null;
  stage: Stage;
  attempt: number;
  technician: string;
  gauge: string;
  setup: string;
  clearance: number;
  dimension: Dimension;
}

/** Stored readings told as a file would tell them, so that one calculation serves both. */
export function asInFile({ dimension, ...place }: Place, values: readonly StoredValue[]): Reading[] {
  return values.map(({ repeat, value, takenAt }) => ({
    ...dimension,
    ...place,
    line: repeat,
    takenAt,
    gaugeKind: null,
    repeat,
    value,
    cause: null,
  }));
}

/** The collapsed form of one observation, as of a file with these readings alone; null where there are none. */
export function collapseOne(place: Place, values: readonly StoredValue[]): Observation | null {
  const [job] = collapse(asInFile(place, values));
  return job?.rounds[0]?.setups[0]?.observations[0] ?? null;
}

/** Mean of the values as read, from the mean deviation. */
export const meanRead = (
  { deviation, nominal, quantity }: Pick<Observation, 'deviation' | 'nominal' | 'quantity'>,
  clearance: number | null,
): number => deviation + nominal + (quantity === 'height' ? (clearance ?? 0) : 0);

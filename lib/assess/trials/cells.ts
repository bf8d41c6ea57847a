import { collapse } from '@/lib/stats';
import { requireAllFinite } from '@/lib/stats/arguments';
import type { TrialReading } from './types';

/** One hanging of a trial, collapsed. */
export interface Hanging {
  person: string;
  point: string;
  setup: string;
  n: number;
  mean: number;
  ss: number;
}

/** The hangings of a trial in the order of their names. RangeError for a reading that is not a number. */
export function hangingsOf(readings: readonly TrialReading[]): Hanging[] {
  requireAllFinite(
    'The readings of a trial',
    readings.map(({ value }) => value),
  );
  const groups = new Map<string, TrialReading[]>();
  for (const reading of readings) {
    const key = JSON.stringify([reading.person, reading.point, reading.setup]);
    const group = groups.get(key);
    if (group === undefined) groups.set(key, [reading]);
    else group.push(reading);
  }
  return [...groups.keys()].sort().flatMap((key) => {
    const group = groups.get(key) ?? [];
    const [first] = group;
    if (!first) return [];
    const { person, point, setup } = first;
    const { n, mean, ss } = collapse(group.map(({ value }) => value));
    return [{ person, point, setup, n, mean, ss }];
  });
}

export const namesOf = (hangings: readonly Hanging[], of: 'person' | 'point'): string[] =>
  [...new Set(hangings.map((hanging) => hanging[of]))].sort();

/** A scatter with its degrees of freedom. */
export interface Pooled {
  sd: number;
  df: number;
}

/** Reading again with the gauge untouched, pooled over hangings. */
export function readingScatter(hangings: readonly Hanging[]): Pooled {
  const df = hangings.reduce((sum, { n }) => sum + n - 1, 0);
  const ss = hangings.reduce((sum, hanging) => sum + hanging.ss, 0);
  return { df, sd: df > 0 ? Math.sqrt(ss / df) : 0 };
}

/** Hanging and reading (the mean of a hanging) about the mean of the same person at the same point, pooled. */
export function hangingScatter(hangings: readonly Hanging[]): Pooled {
  const cells = cellsOf(hangings);
  const df = cells.reduce((sum, { n }) => sum + n - 1, 0);
  const ss = cells.reduce((sum, cell) => sum + cell.ss, 0);
  return { df, sd: df > 0 ? Math.sqrt(ss / df) : 0 };
}

/** The means of hangings of one person at one point, collapsed. */
export interface Cell {
  person: string;
  point: string;
  n: number;
  mean: number;
  ss: number;
}

export function cellsOf(hangings: readonly Hanging[]): Cell[] {
  const people = namesOf(hangings, 'person');
  const points = namesOf(hangings, 'point');
  return people.flatMap((person) =>
    points.flatMap((point) => {
      const means = hangings
        .filter((one) => one.person === person && one.point === point)
        .map(({ mean }) => mean);
      if (means.length === 0) return [];
      const { n, mean, ss } = collapse(means);
      return [{ person, point, n, mean, ss }];
    }),
  );
}

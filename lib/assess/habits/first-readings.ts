import { deviationOf, dimensionKey, type Reading } from '@/lib/measure';

/**
 * The deviation of the first reading of every dimension that was read more than once in a setup, by job and then by
 * `firstKey`. It is all that looking for habits needs beyond the collapsed readings: one number where a dimension has
 * several, nothing where it has one.
 */
export type FirstReadings = ReadonlyMap<string, ReadonlyMap<string, number>>;

export const firstKey = (setup: string, dimension: Parameters<typeof dimensionKey>[0]): string =>
  `${setup}\n${dimensionKey(dimension)}`;

/** First by `repeat`, then by time; the order of the readings changes nothing. */
export function firstReadings(readings: Iterable<Reading>): FirstReadings {
  const jobs = new Map<string, Map<string, { reading: Reading; several: boolean }>>();
  for (const reading of readings) {
    let job = jobs.get(reading.job);
    if (job === undefined)
      jobs.set(reading.job, (job = new Map<string, { reading: Reading; several: boolean }>()));
    const key = firstKey(reading.setup, reading);
    const known = job.get(key);
    if (known === undefined) job.set(key, { reading, several: false });
    else {
      known.several = true;
      if (isEarlier(reading, known.reading)) known.reading = reading;
    }
  }
  return new Map(
    [...jobs].map(([job, firsts]) => [
      job,
      new Map(
        [...firsts].flatMap(([key, { reading, several }]) => (several ? [[key, deviationOf(reading)]] : [])),
      ),
    ]),
  );
}

function isEarlier(a: Reading, b: Reading): boolean {
  return (a.repeat - b.repeat || a.takenAt - b.takenAt || a.value - b.value) < 0;
}

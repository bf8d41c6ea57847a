import type { NewRows } from './new-rows';

/** No length on a vehicle is longer, as `prisma/checks.mjs` says it. */
const LONGEST = 100_000;
const isLength = (mm: number) => mm >= -LONGEST && mm <= LONGEST;
/** The database takes a text to end where a zero stands. */
const isSaid = (text: string) => text !== '' && !text.startsWith('\0');

/**
 * Which CHECK of `Setup`, `Observation` or `Reading` some rows would break that are about to be written; null where none.
 * Asked of columns of numbers it takes a hundredth of what SQLite takes to ask it row by row.
 * `tests/property/store/broken-check.test.ts` holds it to what the database refuses.
 */
export function brokenCheck({ named, observations, readings }: NewRows): string | null {
  if (!named.labels.every(isSaid)) return 'a setup has a label';
  const { n, ss, mean, deviation } = observations;
  for (let k = 0; k < observations.count; k++) {
    const count = n[k] ?? 0;
    const squares = ss[k] ?? 0;
    if (!(count >= 0 && squares >= 0)) return 'counts and sums of squares are not negative';
    if (!(count > 1 || squares === 0)) return 'one reading does not scatter';
    if (!(isLength(mean[k] ?? 0) && isLength(deviation[k] ?? 0))) return 'a mean is a length on a vehicle';
  }
  const { repeat, value, line } = readings;
  for (let k = 0; k < readings.count; k++) {
    if (!((repeat[k] ?? 0) >= 1 && (line[k] ?? 0) >= 1)) return 'repeats and lines are counted from one';
    if (!isLength(value[k] ?? 0)) return 'a value is a length on a vehicle';
  }
  return null;
}

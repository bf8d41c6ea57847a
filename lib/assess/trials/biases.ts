import { tInterval, tUpper } from '@/lib/stats';
import { cellsOf, hangingScatter, namesOf, type Hanging } from './cells';
import type { Estimated } from './types';

const missing = (why: string): Estimated => ({ value: null, low: null, high: null, why });

/**
 * Each person's mean over the points that everybody measured, less the mean of all people, with its t interval from the
 * scatter of hangings about their own person and point. In the order of the names.
 */
export function personBiases(hangings: readonly Hanging[]): (Estimated & { p: number | null })[] {
  const people = namesOf(hangings, 'person');
  const none = (why: string) => people.map(() => ({ ...missing(why), p: null }));
  if (people.length < 2) return none('There is nobody to compare with.');
  const means = personMeans(hangings);
  if (means === null) return none('There is no point that everybody measured.');
  const { sd, df } = hangingScatter(hangings);
  const k = people.length;
  const all = means.reduce((sum, { mean }) => sum + mean, 0) / k;
  return means.map(({ mean }, i) => {
    const value = mean - all;
    if (df === 0)
      return { ...missing('No point was hung twice, so the bias has no uncertainty.'), value, p: null };
    const spread = means.reduce(
      (sum, other, j) => sum + other.weight * (j === i ? (1 - 1 / k) ** 2 : 1 / k ** 2),
      0,
    );
    const se = sd * Math.sqrt(spread);
    const p = se > 0 ? Math.min(1, 2 * tUpper(Math.abs(value) / se, df)) : null;
    return { value, ...tInterval(value, se, df), p };
  });
}

/** Mean of each person over the points that all measured, and the variance of it in units of a hanging's. */
function personMeans(
  hangings: readonly Hanging[],
): { person: string; mean: number; weight: number }[] | null {
  const cells = cellsOf(hangings);
  const people = namesOf(hangings, 'person');
  const shared = namesOf(hangings, 'point').filter((point) =>
    people.every((person) => cells.some((cell) => cell.person === person && cell.point === point)),
  );
  if (shared.length === 0) return null;
  return people.map((person) => {
    const own = cells.filter((cell) => cell.person === person && shared.includes(cell.point));
    return {
      person,
      mean: own.reduce((sum, { mean }) => sum + mean, 0) / own.length,
      weight: own.reduce((sum, { n }) => sum + 1 / n, 0) / own.length ** 2,
    };
  });
}

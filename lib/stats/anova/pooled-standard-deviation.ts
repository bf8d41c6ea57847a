import { requireLevel } from '@/lib/stats/arguments';
import { collapse } from '@/lib/stats/collapse';
import { sdInterval } from '@/lib/stats/intervals';
import { CompensatedSum } from '@/lib/stats/linear-algebra/compensated-sum';

export interface PooledSd {
  /** In the unit of the readings; null where no group has two readings. */
  sd: number | null;
  df: number;
  low: number | null;
  high: number | null;
  why: string | null;
}

/**
 * Standard deviation within groups of repeated readings, pooled: sd² = Σ ss / Σ (n − 1).
 *
 * The interval is the chi-square one, at `level` (0.95). Groups may differ in size; one with fewer than two
 * readings adds nothing. `sd` is null where there are no degrees of freedom. Where all repeats are equal the sd
 * is 0 and `high` null: the scatter is finer than the readings show, and how much finer they cannot say.
 * RangeError for a reading that is not a finite number or a level outside (0, 1).
 * Source: ISO 5725-2:2019, 7.4.2 (repeatability variance); interval NIST/SEMATECH e-Handbook 7.2.3.
 */
export function pooledStandardDeviation(groups: readonly (readonly number[])[], level = 0.95): PooledSd {
  requireLevel('The level of an interval', level);
  const squares = new CompensatedSum();
  let df = 0;
  for (const group of groups) {
    const { n, ss } = collapse(group);
    if (n < 2) continue;
    squares.add(ss);
    df += n - 1;
  }
  if (df === 0) {
    return {
      sd: null,
      df,
      low: null,
      high: null,
      why: 'No group holds two readings, so nothing was repeated.',
    };
  }
  const sd = Math.sqrt(squares.value / df);
  if (sd === 0) {
    return {
      sd,
      df,
      low: 0,
      high: null,
      why: 'All repeats are equal: the scatter is finer than the readings show.',
    };
  }
  return { sd, df, ...sdInterval(sd, df, level) };
}

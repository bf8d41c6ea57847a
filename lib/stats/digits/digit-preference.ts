import { requireWhole } from '@/lib/stats/arguments';
import { chiSquareUpper } from '@/lib/stats/distributions';
import { exactMultinomial } from './exact-multinomial';

export interface DigitPreference {
  /** Pearson's chi-square against equal frequencies; null where there are no counts. */
  chiSquare: number | null;
  df: number;
  /** Its upper tail: an approximation that is poor where the expected count is below 5. */
  p: number | null;
  /** Exact multinomial p: the tables no likelier than the observed one. Null where there are too many. */
  exactP: number | null;
  /** The same with the tables ordered by their chi-square. */
  exactPByChiSquare: number | null;
  /** Why a figure is null. */
  why: string | null;
}

/**
 * Are the last digits of the readings used equally often? One count a digit (any number of cells from 2 up).
 *
 * The exact p are null where the tables are too many to be gone through (ten digits: above some 125
 * readings); there the chi-square approximation serves well.
 * RangeError for fewer than two counts or a count that is not whole. Source: Pearson (1900), Philosophical
 * Magazine 50, 157–175; the exact probabilities are the multinomial ones, added up.
 */
export function digitPreference(counts: readonly number[]): DigitPreference {
  requireWhole('The number of digits', counts.length, 2);
  counts.forEach((count) => requireWhole('A count of a digit', count));
  const df = counts.length - 1;
  const n = counts.reduce((sum, count) => sum + count, 0);
  if (n === 0) {
    return {
      chiSquare: null,
      df,
      p: null,
      exactP: null,
      exactPByChiSquare: null,
      why: 'There are no readings.',
    };
  }
  const expected = n / counts.length;
  const chiSquare = counts.reduce((sum, count) => sum + (count - expected) ** 2, 0) / expected;
  const exact = exactMultinomial(counts);
  return {
    chiSquare,
    df,
    p: chiSquareUpper(chiSquare, df),
    exactP: exact && Math.min(1, exact.byProbability),
    exactPByChiSquare: exact && Math.min(1, exact.byChiSquare),
    why: exact ? null : 'There are too many readings for the exact probability; the chi-square one serves.',
  };
}

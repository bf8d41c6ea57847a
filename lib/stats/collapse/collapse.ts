import { requireAllFinite } from '@/lib/stats/arguments';
import { CompensatedSum } from '@/lib/stats/linear-algebra/compensated-sum';

/** Readings reduced to what every later calculation needs. */
export interface Collapsed {
  /** Number of readings; 0 for none, and then `mean` is 0. */
  n: number;
  /** Mean, in the unit of the readings. */
  mean: number;
  /** What rounding `mean` to a double left out: `mean + rest` is the mean to twice the digits. */
  rest: number;
  /** Sum of squared differences from the mean, in the unit squared. */
  ss: number;
}

/**
 * Count, mean and sum of squares of some readings.
 *
 * The readings are shifted by the first of them, which is exact where they share their leading digits; a second
 * pass corrects the mean and the sum of squares for the rounding of the first.
 * RangeError for a reading that is not a finite number.
 * Source: Chan, Golub & LeVeque (1983), The American Statistician 37, 242–247 (the corrected two-pass formula).
 */
export function collapse(values: readonly number[]): Collapsed {
  requireAllFinite('Readings', values);
  const [origin] = values;
  if (origin === undefined) return { n: 0, mean: 0, rest: 0, ss: 0 };
  const first = new CompensatedSum();
  for (const value of values) first.add(value - origin);
  const rough = first.value / values.length;
  const left = new CompensatedSum();
  const squares = new CompensatedSum();
  for (const value of values) {
    const difference = value - origin - rough;
    left.add(difference);
    squares.add(difference * difference);
  }
  const n = values.length;
  const correction = left.value / n;
  return {
    n,
    ...splitSum(origin, rough, correction),
    ss: Math.max(0, squares.value - left.value * correction),
  };
}

/** The sum of `large` and two smaller parts as a double and what the double leaves out. */
export function splitSum(large: number, small: number, tiny: number): { mean: number; rest: number } {
  const first = large + small;
  const back = first - large;
  const error = large - (first - back) + (small - back) + tiny;
  const mean = first + error;
  return { mean, rest: error - (mean - first) };
}

import { requireAllFinite, requireEqualLengths, requireLevel } from '@/lib/stats/arguments';
import { tUpper } from '@/lib/stats/distributions';
import { tInterval } from '@/lib/stats/intervals';

export interface Slope {
  /** Rise of y for one unit of x, with its standard error and t interval; null where it cannot be had. */
  slope: number | null;
  se: number | null;
  low: number | null;
  high: number | null;
  /** Two-sided p of no slope. */
  p: number | null;
  /** Height of the line at the mean of x, and where that is. */
  mean: number | null;
  at: number | null;
  residualSd: number | null;
  df: number;
  why: string | null;
}

/**
 * Straight line through points by least squares, both lists centred first (dates as large numbers lose nothing).
 * Null with `why` for fewer than three points, or where all x are equal. RangeError for values that are not finite or
 * lists of unequal length. Source: NIST/SEMATECH e-Handbook, 4.4.3; checked against scipy `linregress`.
 */
export function slope(x: readonly number[], y: readonly number[], level = 0.95): Slope {
  requireEqualLengths('The x values', x, 'the y values', y);
  requireAllFinite('The x values', x);
  requireAllFinite('The y values', y);
  requireLevel('The level of an interval', level);
  const n = x.length;
  const [cx, cy] = [centred(x), centred(y)];
  const none = { slope: null, se: null, low: null, high: null, p: null, residualSd: null };
  const where = { mean: cy.mean, at: cx.mean, df: Math.max(0, n - 2) };
  if (n < 3) return { ...none, ...where, why: 'A slope with its uncertainty needs three points at least.' };
  const sxx = cx.values.reduce((sum, value) => sum + value * value, 0);
  if (!(sxx > 0)) return { ...none, ...where, why: 'All points lie at the same place.' };
  const rise = cx.values.reduce((sum, value, i) => sum + value * (cy.values[i] ?? 0), 0) / sxx;
  const rest = cy.values.reduce((sum, value, i) => sum + (value - rise * (cx.values[i] ?? 0)) ** 2, 0);
  const residualSd = Math.sqrt(rest / (n - 2));
  const se = residualSd / Math.sqrt(sxx);
  const { low, high } = tInterval(rise, se, n - 2, level);
  const p = se > 0 ? Math.min(1, 2 * tUpper(Math.abs(rise / se), n - 2)) : rise === 0 ? 1 : 0;
  return { slope: rise, se, low, high, p, ...where, residualSd, why: null };
}

/** The values less their mean, in two passes from the first of them. */
function centred(values: readonly number[]): { mean: number | null; values: number[] } {
  const [origin] = values;
  if (origin === undefined) return { mean: null, values: [] };
  const shifted = values.map((value) => value - origin);
  const rough = shifted.reduce((sum, value) => sum + value, 0) / values.length;
  const left = shifted.map((value) => value - rough);
  const correction = left.reduce((sum, value) => sum + value, 0) / values.length;
  return { mean: origin + rough + correction, values: left.map((value) => value - correction) };
}

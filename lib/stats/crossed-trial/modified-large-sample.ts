import {
  chiSquareQuantile,
  chiSquareUpperQuantile,
  fQuantile,
  fUpperQuantile,
} from '@/lib/stats/distributions';
import { estimateOf, type Combination, type Term } from './mean-squares';
import type { MlsInterval } from './types';

/**
 * Modified-large-sample interval of a sum of mean squares (all weights positive).
 *
 * Source: Graybill & Wang (1980), J. Amer. Statist. Assoc. 75, 869–873; Burdick & Graybill (1992), section 3.2.
 */
export function mlsSum(combination: Combination, level: number): MlsInterval {
  const tail = (1 - level) / 2;
  const estimate = estimateOf(combination);
  const spread = (factor: (df: number) => number) =>
    Math.sqrt(combination.reduce((sum, { weight, ms, df }) => sum + (factor(df) * weight * ms) ** 2, 0));
  return truncated(estimate - spread((df) => shrink(df, tail)), estimate + spread((df) => stretch(df, tail)));
}

/**
 * The same of a difference of two mean squares, a − b.
 *
 * Source: Ting, Burdick, Graybill, Jeyaratnam & Lu (1990), J. Statist. Comput. Simul. 35, 135–143; Burdick &
 * Graybill (1992), section 3.3.
 */
export function mlsDifference(a: Term, b: Term, level: number): MlsInterval {
  const tail = (1 - level) / 2;
  const x = a.weight * a.ms;
  const y = -b.weight * b.ms;
  const upper = fUpperQuantile(tail, a.df, b.df);
  const lower = fQuantile(tail, a.df, b.df);
  const [g1, h1] = [shrink(a.df, tail), stretch(a.df, tail)];
  const [g2, h2] = [shrink(b.df, tail), stretch(b.df, tail)];
  const g12 = ((upper - 1) ** 2 - g1 ** 2 * upper ** 2 - h2 ** 2) / upper;
  const h12 = ((1 - lower) ** 2 - h1 ** 2 * lower ** 2 - g2 ** 2) / lower;
  const below = (g1 * x) ** 2 + (h2 * y) ** 2 + g12 * x * y;
  const above = (h1 * x) ** 2 + (g2 * y) ** 2 + h12 * x * y;
  return truncated(x - y - Math.sqrt(Math.max(0, below)), x - y + Math.sqrt(Math.max(0, above)));
}

const shrink = (df: number, tail: number): number => 1 - df / chiSquareUpperQuantile(tail, df);
const stretch = (df: number, tail: number): number => df / chiSquareQuantile(tail, df) - 1;

const truncated = (low: number, high: number): MlsInterval => ({
  low,
  high,
  lowTruncated: Math.max(0, low),
  highTruncated: Math.max(0, high),
});

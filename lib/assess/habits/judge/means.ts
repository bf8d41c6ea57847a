import { tUpper, tUpperQuantile } from '@/lib/stats/distributions';
import { addMoments, type Moments, noMoments, ratioOf } from '../moments';
import type { MeanTally } from '../tally';
import { againstOthers, type Comparison, type Estimate } from './against-others';
import { SEEN_Z } from './sizes';

export interface MeanTest {
  own: Estimate;
  /** Mean of the other hands; null where there are none. */
  others: number | null;
  comparison: Comparison | null;
  /** p that the own mean is above, below zero by chance. */
  aboveZero: number;
  belowZero: number;
}

export interface MeanOptions<Part> {
  /** Take what each gauge shows in other hands off first. */
  byGauge?: boolean;
  /** Least variance of an estimate, by its count. */
  least?: (value: number, moments: Moments) => number;
  /** What to take off a hand's mean before it is compared, with the variance that this adds. */
  offset?: (part: Part) => { value: number; variance: number };
}

/** One hand's mean over jobs against those of the others, and against zero. */
export function compareMeans<Part>(
  own: Part,
  others: readonly Part[],
  tallyOf: (part: Part) => MeanTally,
  spread: number,
  options: MeanOptions<Part> = {},
): MeanTest | null {
  const raw = estimate(own, tallyOf, new Map(), options);
  if (raw === null) return null;
  const gauges = options.byGauge === true ? gaugeMeans(others.map(tallyOf)) : new Map<string, number>();
  const adjusted = estimate(own, tallyOf, gauges, options) ?? raw;
  const rest = others.map((part) => estimate(part, tallyOf, gauges, options)).filter((one) => one !== null);
  const comparison = againstOthers(adjusted, rest, spread);
  const t =
    raw.variance > 0
      ? raw.value / Math.sqrt(raw.variance)
      : raw.value === 0
        ? 0
        : Math.sign(raw.value) * Infinity;
  return {
    own: raw,
    others: comparison === null ? null : raw.value - comparison.difference,
    comparison,
    aboveZero: tUpper(t, raw.df),
    belowZero: tUpper(-t, raw.df),
  };
}

function estimate<Part>(
  part: Part,
  tallyOf: (part: Part) => MeanTally,
  gauges: ReadonlyMap<string, number>,
  { least, offset }: MeanOptions<Part>,
): Estimate | null {
  const { all, by } = tallyOf(part);
  const ratio = ratioOf(all);
  if (ratio === null) return null;
  let shift = 0;
  for (const [gauge, { n }] of Object.entries(by)) shift += (gauges.get(gauge) ?? 0) * n;
  const off = offset?.(part) ?? { value: 0, variance: 0 };
  const variance = Math.max(ratio.variance, least?.(ratio.value, all) ?? 0, 1e-12) + off.variance;
  return { value: ratio.value - shift / all.n - off.value, variance, df: ratio.df };
}

/** Mean of each gauge in these hands, less the mean of them all. */
function gaugeMeans(tallies: readonly MeanTally[]): Map<string, number> {
  const sums = new Map<string, Moments>();
  let all = noMoments();
  for (const tally of tallies) {
    all = addMoments(all, tally.all);
    for (const [gauge, moments] of Object.entries(tally.by)) {
      sums.set(gauge, addMoments(sums.get(gauge) ?? noMoments(), moments));
    }
  }
  const mean = all.n > 0 ? all.s / all.n : 0;
  // A gauge that was hung in few jobs says little: its mean is drawn towards that of all, by three jobs.
  return new Map(
    [...sums].map(([gauge, { k, n, s }]) => [gauge, n > 0 ? (s / n - mean) * (k / (k + 3)) : 0]),
  );
}

/** Two-sided p of both questions together, in the direction of the difference from the other hands. */
export function bothSided({ comparison, aboveZero, belowZero }: MeanTest): { p: number; up: boolean } {
  if (comparison === null)
    return { p: Math.min(1, 2 * Math.min(aboveZero, belowZero)), up: aboveZero < belowZero };
  const up = comparison.difference > 0;
  const one = up ? Math.max(comparison.above, aboveZero) : Math.max(comparison.below, belowZero);
  return { p: Math.min(1, 2 * one), up };
}

/** The difference from the other hands (from zero where there are none), with its 95 % interval. */
export function differenceOf({ own, comparison }: MeanTest): { value: number; low: number; high: number } {
  const value = comparison?.difference ?? own.value;
  const se = comparison?.se ?? Math.sqrt(own.variance);
  const half = tUpperQuantile(0.025, own.df) * se;
  return { value, low: value - half, high: value + half };
}

/** Whether a habit of this size would have been seen. */
export const wouldShow = ({ own, comparison }: MeanTest, size: number): boolean =>
  own.df >= 4 && size >= SEEN_Z * (comparison?.wholeSe ?? Math.sqrt(own.variance));

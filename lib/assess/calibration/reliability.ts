import type { Cause } from '@/lib/measure/types';
import { binomialInterval } from '@/lib/stats/intervals';
import type { Interval } from '../types';
import { type Foretold, type Proved, provedOnly, roundsOf } from './proved';

export const BINS = 10;

/** The heights of which a cause was said with a probability in [low, high), and how many proved so. */
export interface ReliabilityBin {
  low: number;
  high: number;
  heights: number;
  rounds: number;
  proved: number;
  /** Heights beside these that the check left open: they count for nothing here. */
  open: number;
  /** Mean of what was said; null without a height. */
  said: number | null;
  /** Share that proved so, with its 95 % Wilson interval, which takes the heights as independent. */
  share: number | null;
  interval: Interval;
}

/** Reliability of the probabilities of one cause, in tenths; the last tenth takes 1 in. */
export function reliability(heights: readonly Foretold[], cause: Cause): ReliabilityBin[] {
  const bins = Array.from({ length: BINS }, (): Proved[] => []);
  const open = new Array<number>(BINS).fill(0);
  const binOf = ({ p }: Foretold): number => Math.min(BINS - 1, Math.floor(p[cause] * BINS));
  for (const height of provedOnly(heights)) bins[binOf(height)]?.push(height);
  for (const height of heights)
    if (height.proved === null) open[binOf(height)] = (open[binOf(height)] ?? 0) + 1;
  return bins.map((members, index) => {
    const proved = members.filter((height) => height.proved === cause).length;
    const n = members.length;
    const { low, high } = binomialInterval(proved, n);
    return {
      low: index / BINS,
      high: (index + 1) / BINS,
      heights: n,
      rounds: roundsOf(members),
      proved,
      open: open[index] ?? 0,
      said: n === 0 ? null : members.reduce((sum, { p }) => sum + p[cause], 0) / n,
      share: n === 0 ? null : proved / n,
      interval: { low, high },
    };
  });
}

/** Mean distance of what was said from what proved so, weighed by heights: the expected calibration error. Null without a height. */
export function calibrationError(bins: readonly ReliabilityBin[]): number | null {
  const n = bins.reduce((sum, { heights }) => sum + heights, 0);
  if (n === 0) return null;
  return bins.reduce(
    (sum, { heights, said, share }) =>
      sum + (said === null || share === null ? 0 : (heights / n) * Math.abs(said - share)),
    0,
  );
}

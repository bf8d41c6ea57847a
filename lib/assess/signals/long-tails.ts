import {
  excessSpread,
  varianceRoot,
  weightedChangePoint,
  type GroupedChange,
  type VarianceGroup,
} from '@/lib/stats';
import type { Series, SettingSeries } from './types';

/** The setting errors of each period, as groups of which the scatter is asked. */
export const varianceGroups = (periods: SettingSeries['periods']): VarianceGroup[] =>
  periods.map(({ n, ss }) => ({ df: Math.max(0, n - 1), ss: n > 1 ? ss : 0 }));

/** Where a scatter changed most clearly, beside how much it differs from period to period in any case. */
export const changeOfScatter = (groups: readonly VarianceGroup[]): GroupedChange =>
  weightedChangePoint(
    groups.map((group) => {
      const found = varianceRoot(group);
      return found === null ? null : { value: found.root, weight: found.weight };
    }),
  );

/** How long the tails of a hand's setting errors are. */
export interface Tails {
  /** By how many times its scatters differ more than those of normal errors: see `excessSpread`. */
  excess: number;
  /** What that rests on: periods with a scatter. */
  periods: number;
}

/** Of a scatter that may have changed once; null of any other series, and where it cannot be told. */
export function tailsOf(series: Series): Tails | null {
  if (series.what !== 'setting-scatter') return null;
  const groups = varianceGroups(series.periods);
  const { at } = changeOfScatter(groups);
  return at === null
    ? null
    : { excess: excessSpread(groups, [at]), periods: groups.filter(({ df }) => df > 0).length };
}

/**
 * Of all hands together: the mean, by what each rests on; 1 where nothing is known. To a tenth, so that a reading more does
 * not make every chart another.
 */
export function tailsOfAll(hands: readonly Tails[]): number {
  const periods = hands.reduce((sum, hand) => sum + hand.periods, 0);
  const total = hands.reduce((sum, hand) => sum + hand.excess * hand.periods, 0);
  return periods === 0 ? 1 : Math.round((10 * total) / periods) / 10;
}

import {
  excessSpread,
  meanChangePoint,
  mergeCollapsed,
  rateChangePoint,
  rateDifference,
  sdRatio,
  tInterval,
  type Collapsed,
  type GroupedChange,
} from '@/lib/stats';
import { changeOfScatter, varianceGroups } from './long-tails';
import type { RateSeries, Series, SettingSeries, Signal } from './types';

export interface Change {
  /** The first period after it, by its place in the series. */
  at: number;
  side: 'up' | 'down';
  began: Signal['began'];
  size: Signal['size'];
  p: number | null;
  /** What lay before and after, in words: `31 of 52`, `0.42 mm (18 setups)`. */
  before: string;
  after: string;
  /** The period that `before` begins with, where that is not the first: another change came before it. */
  since: string | null;
  /** Of a mean: whether it lies nearer to 0 after than before; null of rates and scatters. */
  nearerZero: boolean | null;
}

/**
 * Where a series changed most clearly, and by how much. The interval of the size takes the likeliest place as the true
 * one, which makes it a little too far from 0 where the change is small.
 */
export function changeOf(series: Series): Change | null {
  return series.what === 'right-first-time' ? rateChange(series) : settingChange(series);
}

function rateChange({ periods }: RateSeries): Change | null {
  const groups = periods.map(({ right, jobs }) => ({ x: right, n: jobs }));
  const found = rateChangePoint(groups);
  if (found.at === null) return null;
  const sum = (list: typeof groups) => ({
    x: list.reduce((total, { x }) => total + x, 0),
    n: list.reduce((total, { n }) => total + n, 0),
  });
  const before = sum(groups.slice(0, found.at));
  const after = sum(groups.slice(found.at));
  const { difference, low, high } = rateDifference(after, before);
  return changeAt(found.at, found, periods, {
    size: sized('rate', difference, { low, high }),
    before: `${before.x} of ${before.n}`,
    after: `${after.x} of ${after.n}`,
  });
}

function settingChange(series: SettingSeries): Change | null {
  return series.what === 'setting-scatter' ? scatterChange(series) : biasChange(series);
}

function scatterChange({ periods }: SettingSeries): Change | null {
  const groups = varianceGroups(periods);
  const found = changeOfScatter(groups);
  if (found.at === null) return null;
  // Where small mis-sets are among the settings, less can be told from as many of them.
  const excess = excessSpread(groups, [found.at]);
  const df = (list: typeof groups) => list.reduce((sum, one) => sum + one.df, 0) / excess;
  const [before, after] = [sdOf(found.before), sdOf(found.after)];
  const { ratio, low, high } = sdRatio(
    { sd: after, df: df(groups.slice(found.at)) },
    { sd: before, df: df(groups.slice(0, found.at)) },
  );
  return changeAt(found.at, found, periods, {
    size: sized('ratio', ratio, { low, high }),
    before: counted(before, periods.slice(0, found.at), 'setups'),
    after: counted(after, periods.slice(found.at), 'setups'),
  });
}

/** The sd of a mean root: what is told is what was compared, so that its side is the change's. */
const sdOf = (root: number | null): number => (root ?? 0) ** 1.5;

function biasChange({ periods }: SettingSeries): Change | null {
  const found = meanChangePoint(periods);
  if (found.at === null) return null;
  const [before, after] = [periods.slice(0, found.at), periods.slice(found.at)];
  return {
    ...changeAt(found.at, found, periods, {
      size: differenceOf(after, before),
      before: counted(found.before, before, 'rounds'),
      after: counted(found.after, after, 'rounds'),
    }),
    nearerZero: Math.abs(found.after ?? 0) < Math.abs(found.before ?? 0),
  };
}

type Periods = SettingSeries['periods'];

/** A mean counts each round once, since its heights share their datum; a scatter counts the settings within the rounds. */
const counted = (mm: number | null, periods: Periods, what: 'rounds' | 'setups'): string =>
  `${(mm ?? 0).toFixed(2)} mm (${periods.reduce((sum, { n }) => sum + n, 0)} ${what})`;

const changeAt = (
  at: number,
  found: GroupedChange,
  periods: readonly { period: string }[],
  told: Pick<Change, 'size' | 'before' | 'after'>,
): Change => ({
  at,
  p: found.p,
  since: null,
  nearerZero: null,
  side: sideOf(found),
  began: beganAt(periods, found),
  ...told,
});

type Size = NonNullable<Signal['size']>;

const sized = (
  unit: Size['unit'],
  value: number | null,
  { low, high }: { low: number | null; high: number | null },
): Signal['size'] => (value === null || low === null || high === null ? null : { unit, value, low, high });

const sideOf = ({ change }: GroupedChange): Change['side'] => ((change ?? 0) > 0 ? 'up' : 'down');

function differenceOf(after: Periods, before: Periods): Signal['size'] {
  const merged = (list: Periods) =>
    list.reduce<Collapsed>((sum, one) => mergeCollapsed(sum, one), { n: 0, mean: 0, rest: 0, ss: 0 });
  const [a, b] = [merged(after), merged(before)];
  const df = a.n + b.n - 2;
  if (df < 1) return null;
  const se = Math.sqrt(((a.ss + b.ss) / df) * (1 / a.n + 1 / b.n));
  return sized('mm', a.mean - b.mean, tInterval(a.mean - b.mean, se, df));
}

function beganAt(periods: readonly { period: string }[], { at, low, high }: GroupedChange): Signal['began'] {
  const name = (place: number | null) => (place === null ? undefined : periods[place]?.period);
  const [period, from, to] = [name(at), name(low), name(high)];
  return period === undefined || from === undefined || to === undefined
    ? null
    : { period, low: from, high: to };
}

import { requireAllFinite, requireLevel, requirePositive, requireWhole } from '@/lib/stats/arguments';
import {
  addWeighted,
  mergeCollapsed,
  NO_WEIGHT,
  type Collapsed,
  type CollapsedInput,
  type Weighted,
  type WeightedSum,
} from '@/lib/stats/collapse';
import { chiSquareUpper, logGamma, tUpper } from '@/lib/stats/distributions';
import { stretch } from './stretch';

/** Where a row of groups changed. Places are those of groups, from 0. */
export interface GroupedChange {
  /** First group after the likeliest change; null where there is no answer. */
  at: number | null;
  /** The places that hold the change with the level asked for: all from `low` to `high`. */
  low: number | null;
  high: number | null;
  before: number | null;
  after: number | null;
  change: number | null;
  /** Bonferroni bound of the probability of so clear a change at any place where there is none. */
  p: number | null;
  probabilities: number[];
  why: string | null;
}

const NONE = { at: null, low: null, high: null, before: null, after: null, change: null, p: null };

/**
 * One change of the mean in a row of groups of normal values of one scatter, each collapsed: where, and how sure.
 * As `changePoint`, whose result it gives where every group is one value; a change can only come between groups.
 * `least` groups that hold values must stand on each side (default 1). Null with `why` for fewer than two groups or four
 * values, or where all values are equal.
 * Source: as `changePoint`.
 */
export function meanChangePoint(
  groups: readonly CollapsedInput[],
  options: { level?: number; least?: number } = {},
): GroupedChange {
  const { level = 0.95, least = 1 } = options;
  requireLevel('The level of an interval', level);
  requireWhole('The least number of groups on a side', least, 1);
  // What lies before and after each place, each group taken in once.
  const before: Collapsed[] = [EMPTY];
  for (const group of groups) before.push(merge(before.at(-1) ?? EMPTY, group));
  const after: Collapsed[] = [EMPTY];
  for (const group of groups.toReversed()) after.push(merge(after.at(-1) ?? EMPTY, group));
  const total = before.at(-1) ?? EMPTY;
  const splits = cuts(groups, ({ n }) => n > 0, least).map((at) => ({
    at,
    before: before[at] ?? EMPTY,
    after: after[groups.length - at] ?? EMPTY,
  }));
  if (splits.length === 0 || total.n < 4) {
    return { ...NONE, probabilities: [], why: 'A change needs two groups and four values at least.' };
  }
  if (!(total.ss > 0)) return { ...NONE, probabilities: [], why: 'All values are equal.' };
  const parts = splits.map(({ at, before, after }) => ({ at, before: partOf(before), after: partOf(after) }));
  return changeOfMean(groups.length, parts, partOf(total), total.n - 2, level);
}

/**
 * One change of a rate in a row of groups of trials: where, and how sure.
 *
 * Given that there is a change, with flat priors on its place and on both rates, the probability of a place is
 * proportional to B(x₁ + 1, n₁ − x₁ + 1) B(x₂ + 1, n₂ − x₂ + 1), x and n the counts before and after it. `p` is the
 * largest likelihood ratio over all places by chi-square of 1 df, times the number of places: an approximation, poor
 * where a side has few failures or few successes. Null with `why` where the trials are fewer than four, all alike, or
 * in fewer than two groups.
 * Source: Smith (1975), Biometrika 62, 407–416 (binomial sequences).
 */
export function rateChangePoint(
  groups: readonly { x: number; n: number }[],
  options: { level?: number; least?: number } = {},
): GroupedChange {
  const { level = 0.95, least = 1 } = options;
  requireLevel('The level of an interval', level);
  requireWhole('The least number of groups on a side', least, 1);
  for (const { x, n } of groups) {
    requireWhole('The number of trials of a group', n);
    requireWhole('The number of successes of a group', x);
    if (x > n) throw new RangeError(`A group has more successes (${x}) than trials (${n}).`);
  }
  const total = groups.reduce(add, { x: 0, n: 0 });
  const splits = cuts(groups, ({ n }) => n > 0, least).map((at) => {
    const before = groups.slice(0, at).reduce(add, { x: 0, n: 0 });
    return { at, before, after: { x: total.x - before.x, n: total.n - before.n } };
  });
  if (splits.length === 0 || total.n < 4) {
    return { ...NONE, probabilities: [], why: 'A change needs two groups and four trials at least.' };
  }
  if (total.x === 0 || total.x === total.n) {
    return { ...NONE, probabilities: [], why: 'All outcomes are alike.' };
  }
  const ratios = splits.map(({ before, after }) => 2 * (largest(before) + largest(after) - largest(total)));
  const tail = chiSquareUpper(Math.max(1e-12, ...ratios), 1);
  return answer(
    groups.length,
    splits.map(({ at, before, after }) => ({ at, before: before.x / before.n, after: after.x / after.n })),
    splits.map(({ before, after }) => logBeta(before) + logBeta(after)),
    Math.min(1, splits.length * tail),
    level,
  );
}

/**
 * One change of the mean in a row of values that weigh differently: where, and how sure. As `changePoint`, whose result it
 * gives where all weigh the same; a null is a place without a value, before which no change can be.
 * Null with `why` for fewer than four values, or where all are equal. RangeError for weights that are not positive.
 * Source: as `changePoint`.
 */
export function weightedChangePoint(
  values: readonly (Weighted | null)[],
  options: { level?: number; least?: number } = {},
): GroupedChange {
  const { level = 0.95, least = 1 } = options;
  requireLevel('The level of an interval', level);
  requireWhole('The least number of values on a side', least, 1);
  for (const one of values) {
    requireAllFinite('The values', one === null ? [] : [one.value]);
    requirePositive('The weight of a value', one?.weight ?? 1);
  }
  const before = runningSums(values);
  const after = runningSums(values.toReversed());
  const total = before.at(-1) ?? NO_WEIGHT;
  const splits = cuts(values, (one) => one !== null, least).map((at) => ({
    at,
    before: before[at] ?? NO_WEIGHT,
    after: after[values.length - at] ?? NO_WEIGHT,
  }));
  const count = values.filter((one) => one !== null).length;
  if (splits.length === 0 || count < 4)
    return { ...NONE, probabilities: [], why: 'A change needs four values at least.' };
  if (!(total.ss > 0)) return { ...NONE, probabilities: [], why: 'All values are equal.' };
  return changeOfMean(values.length, splits, total, count - 2, level);
}

const partOf = ({ n, mean, ss }: Collapsed): WeightedSum => ({ weight: n, mean, ss });

/** The first 0, 1, …, n values, each taken in once. */
function runningSums(values: readonly (Weighted | null)[]): WeightedSum[] {
  const sums = [NO_WEIGHT];
  for (const one of values) {
    const sum = sums.at(-1) ?? NO_WEIGHT;
    sums.push(one === null ? sum : addWeighted(sum, one));
  }
  return sums;
}

/** The likeliest of these places, beside what lies on both sides of each; `df` is what both means leave. */
function changeOfMean(
  groups: number,
  splits: readonly { at: number; before: WeightedSum; after: WeightedSum }[],
  total: WeightedSum,
  df: number,
  level: number,
): GroupedChange {
  const floor = total.ss * 1e-30;
  const logs = splits.map(({ before, after }) => {
    const within = Math.max(before.ss + after.ss, floor);
    return -0.5 * Math.log(before.weight * after.weight) - (df / 2) * Math.log(within);
  });
  const ts = splits.map(({ before, after }) => {
    const apart = after.mean - before.mean;
    const between = (before.weight * after.weight * apart * apart) / total.weight;
    return between === 0 ? 0 : Math.sqrt((between * df) / Math.max(before.ss + after.ss, floor));
  });
  return answer(
    groups,
    splits.map(({ at, before, after }) => ({ at, before: before.mean, after: after.mean })),
    logs,
    Math.min(1, 2 * splits.length * tUpper(Math.max(...ts), df)),
    level,
  );
}

const EMPTY: Collapsed = { n: 0, mean: 0, rest: 0, ss: 0 };
const merge = (a: Collapsed, b: CollapsedInput): Collapsed => mergeCollapsed(a, b);
const add = (a: { x: number; n: number }, b: { x: number; n: number }) => ({ x: a.x + b.x, n: a.n + b.n });
const logBeta = ({ x, n }: { x: number; n: number }): number =>
  logGamma(x + 1) + logGamma(n - x + 1) - logGamma(n + 2);
/** Largest log-likelihood of a rate. */
const largest = ({ x, n }: { x: number; n: number }): number =>
  (x === 0 ? 0 : x * Math.log(x / n)) + (x === n ? 0 : (n - x) * Math.log1p(-x / n));

/** Places of a change that leave `least` filled groups on each side; a change before an empty group is none of its own. */
function cuts<T>(groups: readonly T[], filled: (group: T) => boolean, least: number): number[] {
  const count = groups.filter(filled).length;
  let before = 0;
  return groups.flatMap((group, at) => {
    const here = filled(group);
    const fits = here && before >= least && count - before >= least;
    if (here) before++;
    return fits ? [at] : [];
  });
}

function answer(
  groups: number,
  splits: readonly { at: number; before: number; after: number }[],
  logs: readonly number[],
  p: number,
  level: number,
): GroupedChange {
  const highest = Math.max(...logs);
  const weights = logs.map((log) => Math.exp(log - highest));
  const total = weights.reduce((sum, weight) => sum + weight, 0);
  const probabilities = new Array<number>(groups).fill(0);
  splits.forEach(({ at }, i) => (probabilities[at] = (weights[i] ?? 0) / total));
  const best = splits[logs.indexOf(highest)];
  if (!best) return { ...NONE, probabilities, why: 'There is no place where a change could be.' };
  const { at, before, after } = best;
  return {
    at,
    ...stretch(probabilities, at, level),
    before,
    after,
    change: after - before,
    p,
    probabilities,
    why: null,
  };
}

import { requireAllFinite, requireLevel, requireWhole } from '@/lib/stats/arguments';
import { tUpper } from '@/lib/stats/distributions';
import { splitSums } from './split-sums';
import { stretch } from './stretch';

export interface ChangePoint {
  /** Place, from 0, of the first value after the likeliest change; null where there is no answer. */
  at: number | null;
  /** The places that hold the change with the level asked for: all from `low` to `high`. */
  low: number | null;
  high: number | null;
  /** Means of the values before and from the change on, and the difference. */
  before: number | null;
  after: number | null;
  change: number | null;
  /** Bonferroni bound of the probability of so clear a change at any place where there is none. */
  p: number | null;
  /** Probability of each place being the first after the change, given that there is one; by place. */
  probabilities: number[];
  why: string | null;
}

/**
 * One change of the mean in a row of independent normal values of constant scatter: where, and how sure.
 *
 * Given that there is a change, with flat priors on its place, both means and the log of the sd, the probability
 * of a place is proportional to (m (n − m))^−½ S^−(n−2)/2, m values before it and S the sum of squares about both
 * means; `low` … `high` is the stretch grown around the likeliest place until it holds the level (nominal 95 % holds
 * 97 to 99 %, since places are whole). Whether there is a change at all is another question: `p` bounds it, by the
 * largest two-sample t over all places.
 *
 * `least` values must stand on each side (default 2). Null with `why` for fewer than 2 × least values or at least
 * 4, or where all are equal. RangeError for values that are not finite.
 * Source: Smith (1975), Biometrika 62, 407–416; the bound after Worsley (1979), J. Amer. Statist. Assoc. 74, 365–367.
 */
export function changePoint(
  values: readonly number[],
  options: { level?: number; least?: number } = {},
): ChangePoint {
  const { level = 0.95, least = 2 } = options;
  requireAllFinite('The values', values);
  requireLevel('The level of an interval', level);
  requireWhole('The least number of values on a side', least, 1);
  const n = values.length;
  if (n < Math.max(4, 2 * least)) return none(`A change needs at least ${Math.max(4, 2 * least)} values.`);
  const splits = splitSums(values, least);
  const [first] = splits;
  if (!first || first.total === 0) return none('All values are equal.');

  // A split that leaves no scatter at all is certain; the rest of a rounding error must not decide it.
  const floor = first.total * 1e-30;
  const logs = splits.map(
    ({ m, within }) => -0.5 * Math.log(m * (n - m)) - ((n - 2) / 2) * Math.log(Math.max(within, floor)),
  );
  const highest = logs.reduce((most, value) => Math.max(most, value), -Infinity);
  const weights = logs.map((value) => Math.exp(value - highest));
  const total = weights.reduce((sum, weight) => sum + weight, 0);
  const probabilities = new Array<number>(n).fill(0);
  splits.forEach(({ m }, i) => (probabilities[m] = (weights[i] ?? 0) / total));

  const best = splits[logs.indexOf(highest)] ?? first;
  const { low, high } = stretch(probabilities, best.m, level);
  const t = Math.max(...splits.map((split) => split.t));
  return {
    at: best.m,
    low,
    high,
    before: best.before,
    after: best.after,
    change: best.after - best.before,
    p: Math.min(1, 2 * splits.length * tUpper(t, n - 2)),
    probabilities,
    why: null,
  };
}

function none(why: string): ChangePoint {
  const nothing = { at: null, low: null, high: null, before: null, after: null, change: null, p: null };
  return { ...nothing, probabilities: [], why };
}

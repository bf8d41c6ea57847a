import { requireAllFinite } from '@/lib/stats/arguments';
import { fUpper } from '@/lib/stats/distributions';
import { CompensatedSum } from '@/lib/stats/linear-algebra/compensated-sum';

/** One line of an analysis of variance; the mean square is null where there are no degrees of freedom. */
export interface AnovaLine {
  ss: number;
  df: number;
  ms: number | null;
}

export interface OneWayAnova {
  between: AnovaLine;
  within: AnovaLine;
  f: number | null;
  /** P(F > f), from its own tail. */
  p: number | null;
  /** Between sum of squares over the total. */
  rSquared: number | null;
  residualSd: number | null;
  why: string | null;
}

/**
 * One-way analysis of variance of groups of readings, of any sizes; empty groups count for nothing.
 *
 * Every reading is taken as its difference from one of them, which is exact where they share their leading
 * digits; group means come from two passes and all sums are compensated. So the result is that of the readings
 * as doubles to about 1e-14 relative, whatever constant they carry.
 * `f` and `p` are null, and `why` says why, with fewer than two groups, no repeats, or no scatter within groups.
 * RangeError for a reading that is not a finite number.
 * Source: NIST/SEMATECH e-Handbook 7.4.3; checked against the NIST StRD one-way sets.
 */
export function oneWayAnova(groups: readonly (readonly number[])[]): OneWayAnova {
  for (const group of groups) requireAllFinite('Readings', group);
  const filled = groups.filter((group) => group.length > 0);
  const origin = filled[0]?.[0] ?? 0;
  const parts = filled.map((group) => reduce(group, origin));
  const readings = parts.reduce((sum, part) => sum + part.n, 0);
  const centre = weightedMean(parts, readings);
  const between = line(
    total(parts.map((part) => part.n * (part.mean - centre) ** 2)),
    Math.max(0, filled.length - 1),
  );
  const within = line(total(parts.map((part) => part.ss)), readings - filled.length);
  const sum = between.ss + within.ss;
  const why = whyNoRatio(between, within);
  const f = why === null ? (between.ms ?? 0) / (within.ms ?? 1) : null;
  return {
    between,
    within,
    f,
    p: f === null ? null : fUpper(f, between.df, within.df),
    rSquared: sum > 0 ? between.ss / sum : null,
    residualSd: within.ms === null ? null : Math.sqrt(within.ms),
    why,
  };
}

interface Reduced {
  n: number;
  /** Against the common origin. */
  mean: number;
  ss: number;
}

function reduce(group: readonly number[], origin: number): Reduced {
  const [own = 0] = group;
  const n = group.length;
  const rough = total(group.map((value) => value - own)) / n;
  const left = group.map((value) => value - own - rough);
  const correction = total(left) / n;
  const ss = total(left.map((d) => d * d)) - correction * correction * n;
  return { n, mean: own - origin + (rough + correction), ss: Math.max(0, ss) };
}

function weightedMean(parts: readonly Reduced[], readings: number): number {
  if (readings === 0) return 0;
  const rough = total(parts.map((part) => part.n * part.mean)) / readings;
  return rough + total(parts.map((part) => part.n * (part.mean - rough))) / readings;
}

function total(terms: readonly number[]): number {
  const sum = new CompensatedSum();
  for (const term of terms) sum.add(term);
  return sum.value;
}

const line = (ss: number, df: number): AnovaLine => ({ ss, df, ms: df > 0 ? ss / df : null });

function whyNoRatio(between: AnovaLine, within: AnovaLine): string | null {
  if (between.df === 0) return 'There are fewer than two groups to compare.';
  if (within.df === 0)
    return 'No group holds two readings, so there is no scatter to compare the groups with.';
  if (within.ss === 0)
    return 'The readings within every group are equal, so there is no scatter to compare with.';
  return null;
}

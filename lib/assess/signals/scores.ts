import {
  betaBinomialRow,
  fCdf,
  fUpper,
  mergeCollapsed,
  normalQuantile,
  tUpper,
  type Collapsed,
} from '@/lib/stats';
import type { RateSeries, Series, SettingSeries } from './types';

/** What must be known before a period is held against it: jobs, or degrees of freedom of the setting errors. */
const LEAST = { jobs: 10, df: 5 } as const;

/** Scores beyond this say no more than this one: one wild period must not fill a CUSUM by itself. */
const MOST = 5;

/** Holds periods against those it has learned from. */
export interface Scorer {
  /** Standard normal score of period `i`; null where it is empty or too little was learned. */
  score(i: number): number | null;
  learn(i: number): void;
}

/**
 * A period against all that were learned before it, as a standard normal score.
 *
 * Nothing is assumed known beforehand: the count of right jobs has its beta-binomial distribution given the earlier ones
 * (Jeffreys prior, mid-probability), a mean its t and a variance its F distribution. Without any change the scores of
 * means and variances are independent standard normal, so charts may be designed for that; those of counts are nearly so,
 * a little narrower. Source: Hawkins (1987), The Statistician 36, 299–316 (self-starting charts).
 */
export function scorerOf(series: Series): Scorer {
  return series.what === 'right-first-time' ? rateScorer(series) : settingScorer(series);
}

function rateScorer({ periods }: RateSeries): Scorer {
  const known = { right: 0, jobs: 0 };
  return {
    score(i) {
      const { right, jobs } = periods[i] ?? { right: 0, jobs: 0 };
      if (jobs === 0 || known.jobs < LEAST.jobs) return null;
      return countScore(right, betaBinomialRow(jobs, known.right + 0.5, known.jobs - known.right + 0.5));
    },
    learn(i) {
      known.right += periods[i]?.right ?? 0;
      known.jobs += periods[i]?.jobs ?? 0;
    },
  };
}

function settingScorer({ what, periods }: SettingSeries): Scorer {
  let known: Collapsed = { n: 0, mean: 0, rest: 0, ss: 0 };
  const within = { df: 0, ss: 0 };
  return {
    score(i) {
      const { n, mean, ss } = periods[i] ?? { n: 0, mean: 0, ss: 0 };
      if (what === 'setting-bias') {
        if (n === 0 || known.n <= LEAST.df || !(known.ss > 0)) return null;
        const sd = Math.sqrt(known.ss / (known.n - 1));
        const t = (mean - known.mean) / (sd * Math.sqrt(1 / n + 1 / known.n));
        return ofTails(tUpper(-t, known.n - 1), tUpper(t, known.n - 1));
      }
      if (n < 2 || within.df < LEAST.df || !(within.ss > 0)) return null;
      const f = ss / (n - 1) / (within.ss / within.df);
      return ofTails(fCdf(f, n - 1, within.df), fUpper(f, n - 1, within.df));
    },
    learn(i) {
      const { n, mean, ss } = periods[i] ?? { n: 0, mean: 0, ss: 0 };
      if (n === 0) return;
      known = mergeCollapsed(known, { n, mean, ss });
      within.df += n - 1;
      within.ss += ss;
    },
  };
}

function countScore(x: number, row: readonly number[]): number {
  const half = (row[x] ?? 0) / 2;
  const below = row.slice(0, x).reduce((sum, p) => sum + p, half);
  const above = row.slice(x + 1).reduce((sum, p) => sum + p, half);
  return ofTails(below, above);
}

/** The normal score of a value with so much probability below and above it, from the smaller tail. */
function ofTails(below: number, above: number): number {
  const score = below < above ? normalQuantile(below) : -normalQuantile(above);
  return Math.max(-MOST, Math.min(MOST, score));
}

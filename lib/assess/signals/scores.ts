import {
  addWeighted,
  betaBinomialRow,
  mergeCollapsed,
  NO_WEIGHT,
  normalQuantile,
  tUpper,
  varianceRoot,
  type Collapsed,
} from '@/lib/stats';
import { varianceGroups } from './long-tails';
import type { RateSeries, Series, SettingSeries } from './types';

/** What must be known before a period is held against it: jobs, or degrees of freedom of the setting errors. */
const LEAST = { jobs: 10, df: 5 } as const;

/** So many periods of its own what all hands show of their scatters' spread is worth for one of them: a judgement. */
const SHOP_WORTH = 10;

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
 * (Jeffreys prior, mid-probability), a mean its t distribution, and so has a scatter, on the scale of `varianceRoot` and beside
 * how much scatters differ from period to period. Setting errors have longer tails than normal ones, since small mis-sets are
 * among them: held against an F distribution, hands that never change seemed to improve for years. That spread is the hand's
 * own, drawn to what all hands show. Without any change the scores of means are independent standard normal, so charts may be
 * designed for that; those of scatters are nearly so, and those of counts a little narrower.
 * @param excess what all hands show: by how many times scatters differ more than those of normal errors.
 * Source: Hawkins (1987), The Statistician 36, 299–316 (self-starting charts); Smyth (2004), Stat. Appl. Genet. Mol. Biol. 3,
 * article 3 (a variance of one's own drawn to that of all).
 */
export function scorerOf(series: Series, excess = 1): Scorer {
  if (series.what === 'right-first-time') return rateScorer(series);
  return series.what === 'setting-bias' ? biasScorer(series) : scatterScorer(series, excess);
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

function biasScorer({ periods }: SettingSeries): Scorer {
  let known: Collapsed = { n: 0, mean: 0, rest: 0, ss: 0 };
  return {
    score(i) {
      const { n, mean } = periods[i] ?? { n: 0, mean: 0 };
      if (n === 0 || known.n <= LEAST.df || !(known.ss > 0)) return null;
      const sd = Math.sqrt(known.ss / (known.n - 1));
      return tScore((mean - known.mean) / (sd * Math.sqrt(1 / n + 1 / known.n)), known.n - 1);
    },
    learn(i) {
      const period = periods[i];
      if (period !== undefined && period.n > 0) known = mergeCollapsed(known, period);
    },
  };
}

function scatterScorer({ periods }: SettingSeries, excess: number): Scorer {
  const roots = varianceGroups(periods).map(varianceRoot);
  const known = { periods: 0, df: 0 };
  let sum = NO_WEIGHT;
  return {
    score(i) {
      const own = roots[i] ?? null;
      if (own === null || known.df < LEAST.df || !(sum.mean > 0)) return null;
      const df = SHOP_WORTH + known.periods - 1;
      const sd = Math.sqrt((SHOP_WORTH * excess * sum.mean ** 2 + sum.ss) / df);
      return tScore((own.root - sum.mean) / (sd * Math.sqrt(1 / own.weight + 1 / sum.weight)), df);
    },
    learn(i) {
      const own = roots[i] ?? null;
      if (own === null) return;
      known.periods++;
      known.df += (periods[i]?.n ?? 1) - 1;
      sum = addWeighted(sum, { value: own.root, weight: own.weight });
    },
  };
}

const tScore = (t: number, df: number): number => ofTails(tUpper(-t, df), tUpper(t, df));

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

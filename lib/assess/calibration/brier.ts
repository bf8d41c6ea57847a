import { CAUSES, type Cause } from '@/lib/measure/types';
import type { Interval } from '../types';
import { type Foretold, type Proved, provedOnly, roundsOf } from './proved';

/** With fewer rounds an interval from the normal approximation would be a guess. */
export const FEW_ROUNDS = 10;

const NORMAL_95 = 1.959964;

export interface BrierScore extends Interval {
  heights: number;
  rounds: number;
  /** Null without a height. */
  score: number | null;
  /** What the score would be on average if every probability were right. */
  ifRight: number | null;
  /** What saying the same shares of every height would score: the shares that proved so. */
  ofShares: number | null;
  /** Why there is no score or no interval. */
  why: string | null;
}

/**
 * Brier score (Brier 1950, Monthly Weather Review 78, 1–3): over all four causes Σ (p − y)², from 0 to 2; for one
 * cause (p − y)², from 0 to 1. Smaller is better. The 95 % interval is the normal approximation of a mean whose
 * rounds are independent and whose heights within a round are not: the variance is
 * R / (R − 1) × Σ_rounds (Σ_heights (b − mean))² / n², R the number of rounds.
 */
export function brierScore(heights: readonly Foretold[], cause?: Cause): BrierScore {
  const proved = provedOnly(heights);
  const rounds = roundsOf(proved);
  const causes: readonly Cause[] = cause === undefined ? CAUSES : [cause];
  const n = proved.length;
  if (n === 0) {
    const why = 'No height has been proved yet.';
    return { heights: 0, rounds, score: null, low: null, high: null, ifRight: null, ofShares: null, why };
  }
  const scores = proved.map((height) => scoreOf(height, causes));
  const score = mean(scores);
  const ifRight = mean(proved.map(({ p }) => causes.reduce((sum, c) => sum + p[c] * (1 - p[c]), 0)));
  const shares = causes.map((c) => proved.filter((height) => height.proved === c).length / n);
  const ofShares = shares.reduce((sum, share) => sum + share * (1 - share), 0);
  const found = { heights: n, rounds, score, ifRight, ofShares };
  if (rounds < FEW_ROUNDS) {
    const why = `Fewer than ${FEW_ROUNDS} rounds: too few for an interval.`;
    return { ...found, low: null, high: null, why };
  }
  const half = NORMAL_95 * standardError(proved, scores, score, rounds);
  return {
    ...found,
    low: Math.max(0, score - half),
    high: Math.min(causes.length === 1 ? 1 : 2, score + half),
    why: null,
  };
}

const scoreOf = ({ p, proved }: Proved, causes: readonly Cause[]): number =>
  causes.reduce((sum, cause) => sum + (p[cause] - (proved === cause ? 1 : 0)) ** 2, 0);

const mean = (values: readonly number[]): number =>
  values.reduce((sum, value) => sum + value, 0) / values.length;

function standardError(
  heights: readonly Proved[],
  scores: readonly number[],
  score: number,
  rounds: number,
): number {
  const byRound = new Map<string, number>();
  heights.forEach(({ round }, i) => byRound.set(round, (byRound.get(round) ?? 0) + (scores[i] ?? 0) - score));
  const squares = [...byRound.values()].reduce((sum, value) => sum + value ** 2, 0);
  return Math.sqrt((rounds / (rounds - 1)) * squares) / heights.length;
}

/** The score of each month that has a proved height, in order. */
export function brierByMonth(
  heights: readonly (Foretold & { month: string })[],
): (BrierScore & { month: string })[] {
  const months = new Map<string, Foretold[]>();
  for (const height of heights) {
    if (height.proved !== null) months.set(height.month, [...(months.get(height.month) ?? []), height]);
  }
  return [...months]
    .sort(([a], [b]) => (a < b ? -1 : 1))
    .map(([month, members]) => ({ month, ...brierScore(members) }));
}

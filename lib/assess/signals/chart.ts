import { scorerOf } from './scores';
import type { ChartPoint, Design, Series, SignalChart } from './types';

type Limits = Pick<Design, 'lambda' | 'k'> & {
  ewmaLimit: number;
  cusumLimit: number;
  /** Of a scatter: how long the tails of all hands are. */
  excess?: number;
};

/**
 * EWMA and two-sided CUSUM of the scores of one series: z ← λ x + (1 − λ) z, U ← max(0, U + x − k), D ← max(0, D − x − k).
 *
 * A period that stands in alarm is not learned from, so that a change that was noticed does not become the standard; a sum
 * is cut at 1.25 times its limit, so that an alarm ends some periods after its cause.
 * Source: NIST/SEMATECH e-Handbook, 6.3.2.3 and 6.3.2.4.
 */
export function chartOf(series: Series, design: Limits): SignalChart {
  const { lambda, k, ewmaLimit, cusumLimit, excess } = design;
  const scorer = scorerOf(series, excess);
  let [ewma, upper, lower] = [0, 0, 0];
  const points = series.periods.map(({ period }, i): ChartPoint => {
    const score = scorer.score(i);
    if (score === null) {
      scorer.learn(i);
      return { period, score, ewma: null, upper: null, lower: null, alarm: null };
    }
    ewma = lambda * score + (1 - lambda) * ewma;
    upper = Math.min(MOST * cusumLimit, Math.max(0, upper + score - k));
    lower = Math.min(MOST * cusumLimit, Math.max(0, lower - score - k));
    const up = ewma > ewmaLimit || upper > cusumLimit;
    const down = ewma < -ewmaLimit || lower > cusumLimit;
    if (!up && !down) scorer.learn(i);
    return { period, score, ewma, upper, lower, alarm: sideOf(up, down, ewma) };
  });
  const scored = points.some(({ score }) => score !== null);
  const why = scored ? null : 'There is too little history to hold a period against.';
  return { series, points, ewmaLimit, cusumLimit, why };
}

const MOST = 1.25;

function sideOf(up: boolean, down: boolean, ewma: number): ChartPoint['alarm'] {
  if (up && down) return ewma > 0 ? 'up' : 'down';
  return up ? 'up' : down ? 'down' : null;
}

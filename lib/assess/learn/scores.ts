import type { Phase } from '../cause/learned';
import type { RoundScores } from './round-scores';

/** Scores of a few parameters, with what a step towards the likeliest and an interval need to know beside them. */
export interface Scores {
  keys: string[];
  index: Map<string, number>;
  score: Float64Array;
  /** Sum over rounds of score × scoreᵀ (row-major). */
  information: Float64Array;
  /** What the model expects of the information, were each round's explanation known; and how much is missing of it. */
  expected: Float64Array;
  missing: Float64Array;
}

/** What the parameters of a hand, of a gauge and of the sound bodies of a phase are called. */
export const handKey = (technician: string): string => `t ${technician}`;
export const gaugeKey = (gauge: string): string => `g ${gauge}`;
/** A repair's scatter is the same however often it is measured. */
export const bodyKey = (phase: Phase): string => (phase === 'before' ? 'b before' : 'b after');

export function scores(keys: string[]): Scores {
  const square = keys.length ** 2;
  return {
    keys,
    index: new Map(keys.map((key, index) => [key, index])),
    score: new Float64Array(keys.length),
    information: new Float64Array(square),
    expected: new Float64Array(square),
    missing: new Float64Array(square),
  };
}

/**
 * A round's score counts for at most so many standard deviations of what the model expects. Readings that no explanation
 * fits would else move a hand's scatter further than all its others do.
 */
const WILDEST = 5;

/** What a row and a column of a covariance are multiplied by, so that `own` on the diagonal is at most `most`. */
export const partWithin = (own: number, most: number): number => (own > most ? Math.sqrt(most / own) : 1);

/**
 * Adds one round's scores to the sums. What is not known of its explanation is missing of the information: the variance
 * of the score between explanations (Louis 1982, Journal of the Royal Statistical Society B 44, 226–233), though no more
 * of a parameter's than all.
 */
export function addScores(into: Scores, round: RoundScores): void {
  const { rows, score, squares, expected } = round;
  const n = into.keys.length;
  const k = rows.length;
  const counted = new Float64Array(k);
  const part = new Float64Array(k);
  for (let i = 0; i < k; i++) {
    const value = score[i] ?? 0;
    const known = expected[i * k + i] ?? 0;
    const most = WILDEST * Math.sqrt(known);
    counted[i] = Math.min(most, Math.max(-most, value));
    const missing = (squares[i * k + i] ?? 0) - value * value;
    part[i] = partWithin(missing, known);
  }
  for (let i = 0; i < k; i++) {
    const row = rows[i] ?? 0;
    into.score[row] = (into.score[row] ?? 0) + (counted[i] ?? 0);
    for (let j = 0; j < k; j++) {
      const at = row * n + (rows[j] ?? 0);
      const own = i * k + j;
      const missing = (squares[own] ?? 0) - (score[i] ?? 0) * (score[j] ?? 0);
      into.information[at] = (into.information[at] ?? 0) + (counted[i] ?? 0) * (counted[j] ?? 0);
      into.expected[at] = (into.expected[at] ?? 0) + (expected[own] ?? 0);
      into.missing[at] = (into.missing[at] ?? 0) + (part[i] ?? 0) * (part[j] ?? 0) * missing;
    }
  }
}

import type { RoundModel } from '../cause/model';
import { bodyKey, gaugeKey, handKey, type Scores } from './scores';

/**
 * The scores of one round on the few parameters that it tells something of: what each explanation says, what all of them
 * say together, and how far they differ.
 */
export class RoundScores {
  /** Which parameters these are, by their rows among all. */
  readonly rows: readonly number[];
  /** Of the explanation under way. */
  readonly own: Float64Array;
  /** Of all explanations by their weights; and the same of score × scoreᵀ (row-major). */
  readonly score: Float64Array;
  readonly squares: Float64Array;
  /** What the model expects of the information, were the explanation known (row-major). */
  readonly expected: Float64Array;

  constructor(rows: readonly number[]) {
    this.rows = rows;
    this.own = new Float64Array(rows.length);
    this.score = new Float64Array(rows.length);
    this.squares = new Float64Array(rows.length ** 2);
    this.expected = new Float64Array(rows.length ** 2);
  }

  /** @param slot of a parameter in this round. */
  add(slot: number, value: number): void {
    this.own[slot] = (this.own[slot] ?? 0) + value;
  }

  /** @param a slot of one parameter. @param b that of another, or of the same. */
  expect(a: number, b: number, value: number): void {
    const at = a * this.rows.length + b;
    this.expected[at] = (this.expected[at] ?? 0) + value;
  }

  /** Counts the explanation under way, and begins the next. */
  weigh(weight: number): void {
    const { own, score, squares } = this;
    const n = own.length;
    for (let i = 0; i < n; i++) {
      const value = own[i] ?? 0;
      score[i] = (score[i] ?? 0) + weight * value;
      for (let j = 0; j < n; j++)
        squares[i * n + j] = (squares[i * n + j] ?? 0) + weight * value * (own[j] ?? 0);
    }
    own.fill(0);
  }
}

/** Where the parameters of a round's setups and bodies stand among its scores. */
export interface RoundSlots {
  scatters: RoundScores;
  biases: RoundScores;
  /** Scatter of the hand, by zero setup. */
  zeros: readonly number[];
  /** By step. */
  steps: readonly { scatter: number; hand: number; gauge: number }[];
  /** Scatter of the sound body. */
  body: number;
}

export function roundSlots(model: RoundModel, of: { scatters: Scores; biases: Scores }): RoundSlots {
  const scatters = slotsAmong(of.scatters);
  const biases = slotsAmong(of.biases);
  const zeros = model.zeros.map(({ pair }) => scatters.slot(handKey(pair.technician)));
  const steps = model.steps.map(({ pair: { technician, gauge } }) => ({
    scatter: scatters.slot(handKey(technician)),
    hand: biases.slot(handKey(technician)),
    gauge: biases.slot(gaugeKey(gauge)),
  }));
  const body = scatters.slot(bodyKey(model.frame.phase));
  return {
    scatters: new RoundScores(scatters.rows),
    biases: new RoundScores(biases.rows),
    zeros,
    steps,
    body,
  };
}

function slotsAmong({ index }: Scores): { rows: number[]; slot: (key: string) => number } {
  const rows: number[] = [];
  return {
    rows,
    slot: (key) => {
      const row = index.get(key);
      if (row === undefined) throw new RangeError(`Nothing is learned of '${key}'.`);
      const known = rows.indexOf(row);
      return known >= 0 ? known : rows.push(row) - 1;
    },
  };
}

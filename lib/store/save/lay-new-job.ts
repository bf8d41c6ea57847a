import type { ReadingTable, Stage } from '@/lib/measure';

/** A job that is not stored yet, by the numbers of the table that holds its readings. */
export interface NewJob {
  job: number;
  /** Its lines by setup, dimension and repeat. */
  lines: number[];
  setups: NewSetup[];
  rounds: NewRound[];
  /** Of lines in `lines`: the dimension of each. */
  dimensions: number[];
}

export interface NewSetup {
  label: string;
  technician: number;
  gauge: number;
  round: NewRound;
  hungAt: number;
  /** Its part of the job's lines. */
  from: number;
  to: number;
}

export interface NewRound {
  stage: Stage;
  attempt: number;
  /** Null as long as it has no height. */
  clearance: number | null;
  first: NewSetup | null;
}

/** Lays out the jobs of a table one after another. */
export class NewJobs {
  readonly #stamp: Int32Array;
  readonly #within: Int32Array;
  #count = 0;

  constructor(private readonly table: ReadingTable) {
    this.#stamp = new Int32Array(table.lines.setups.all.length);
    this.#within = new Int32Array(table.lines.setups.all.length);
  }

  /** @param dimensionOf a number for the dimension of a line; lines of one dimension have the same. */
  lay(job: number, dimensionOf: (line: number) => number): NewJob {
    const { lines: table } = this.table;
    const stamp = ++this.#count;
    const rounds = new Map<number, NewRound>();
    const setups: NewSetup[] = [];
    const keys: { line: number; setup: number; dimension: number; repeat: number }[] = [];
    for (const line of this.table.linesOf(job)) {
      const label = table.setupAt[line] ?? 0;
      const place = table.places.all[table.placeAt[line] ?? 0];
      const hand = table.hands.all[table.handAt[line] ?? 0];
      if (place === undefined || hand === undefined)
        throw new RangeError('A line of a table has all its numbers.');
      let round = rounds.get(place.round);
      if (round === undefined) {
        round = { stage: place.stage, attempt: place.attempt, clearance: null, first: null };
        rounds.set(place.round, round);
      }
      if (round.clearance === null && this.table.dimensionAt(line).quantity === 'height')
        round.clearance = this.table.clearanceOf(place.round);
      const at = table.takenAt[line] ?? 0;
      if (this.#stamp[label] !== stamp) {
        this.#stamp[label] = stamp;
        this.#within[label] = setups.length;
        const { technician, gauge } = hand;
        const name = table.setups.all[label] ?? '';
        setups.push({ label: name, technician, gauge, round, hungAt: at, from: 0, to: 0 });
      }
      const within = this.#within[label] ?? 0;
      const setup = setups[within];
      if (setup !== undefined && at < setup.hungAt) setup.hungAt = at;
      keys.push({ line, setup: within, dimension: dimensionOf(line), repeat: table.repeat[line] ?? 0 });
    }
    keys.sort((a, b) => a.setup - b.setup || a.dimension - b.dimension || a.repeat - b.repeat);
    for (const [index, key] of keys.entries()) {
      const setup = setups[key.setup];
      if (setup === undefined) continue;
      if (index === 0 || keys[index - 1]?.setup !== key.setup) setup.from = index;
      setup.to = index + 1;
    }
    for (const setup of setups) if (isBefore(setup, setup.round.first)) setup.round.first = setup;
    return {
      ...{ job, setups, rounds: [...rounds.values()] },
      lines: keys.map(({ line }) => line),
      dimensions: keys.map(({ dimension }) => dimension),
    };
  }
}

/** By time, then label. */
export function isBefore(setup: NewSetup, other: NewSetup | null): boolean {
  if (other === null || setup.hungAt < other.hungAt) return true;
  return setup.hungAt === other.hungAt && setup.label < other.label;
}

import {
  deviationOf,
  dimensionKey,
  spreadOf,
  type Cause,
  type Dimension,
  type ReadingTable,
} from '@/lib/measure';
import { storedSide, type StoredSide } from '@/lib/store/sql/side';
import { meanRead } from './collapse-one';
import type { NamedSoFar } from './named-so-far';
import { CAUSES, type NewRoundRow, type NewRows } from './new-rows';

/** A round, or a job, by the setup that was hung first in it. */
interface Begun {
  at: number;
  label: number;
  technician: number;
}

/** A round of a job, with what is only known once all its lines are seen. */
interface Round extends NewRoundRow {
  first: Begun | null;
}

/**
 * Lays out jobs of a table of which nothing is stored yet, with their collapsed form: nothing can stand beside them, so
 * nothing has to be looked up. What comes of it is what `write-batch.ts` writes of the same readings;
 * `tests/property/store/new-jobs.test.ts` holds both to each other.
 */
export class NewJobs {
  /** Of a label: the job in which it was met last, and which setup of the piece it is there. */
  readonly #job: Int32Array;
  readonly #setup: Int32Array;
  #count = 0;

  /** @param named by this file's earlier pieces, whichever part of the file they are of. */
  constructor(
    private readonly table: ReadingTable,
    private readonly named: NamedSoFar,
  ) {
    this.#job = new Int32Array(table.lines.setups.all.length);
    this.#setup = new Int32Array(table.lines.setups.all.length);
  }

  layOut(jobs: readonly number[]): NewRows {
    const piece = emptyRows(jobs.reduce((sum, job) => sum + this.table.linesOf(job).length, 0));
    for (const job of jobs) this.#lay(job, piece);
    piece.named = this.named.take(this.table.lines);
    return piece;
  }

  #lay(job: number, piece: NewRows): void {
    const { table } = this;
    const { setupAt, placeAt, handAt, places, hands, takenAt, repeat, setups: labels } = table.lines;
    const { setups } = piece;
    const stamp = ++this.#count;
    const lines = table.linesOf(job);
    const dimensionOf = this.#dimensions(job, piece);
    const [firstSetup, jobAt] = [setups.count, piece.jobs.length];
    const rounds = new Map<number, Round>();
    const roundOf: Round[] = [];
    const keys: Key[] = [];
    let sorted = true;
    let lastReadAt = -Infinity;
    for (const line of lines) {
      const label = setupAt[line] ?? 0;
      const place = places.all[placeAt[line] ?? 0];
      const hand = hands.all[handAt[line] ?? 0];
      if (place === undefined || hand === undefined)
        throw new RangeError('A line of a table has all its numbers.');
      let round = rounds.get(place.round);
      if (round === undefined) {
        const { stage, attempt } = place;
        round = { job: jobAt, stage, attempt, clearance: null, technician: 0, startedAt: 0, first: null };
        rounds.set(place.round, round);
      }
      if (round.clearance === null && table.dimensionAt(line).quantity === 'height')
        round.clearance = table.clearanceOf(place.round);
      const at = takenAt[line] ?? 0;
      if (at > lastReadAt) lastReadAt = at;
      if (this.#job[label] !== stamp) {
        this.#job[label] = stamp;
        this.#setup[label] = setups.count;
        roundOf.push(round);
        setups.job[setups.count] = jobAt;
        setups.label[setups.count] = label;
        setups.technician[setups.count] = hand.technician;
        setups.gauge[setups.count] = hand.gauge;
        setups.hungAt[setups.count] = at;
        setups.count++;
      }
      const setup = this.#setup[label] ?? 0;
      if (at < (setups.hungAt[setup] ?? 0)) setups.hungAt[setup] = at;
      const key = { line, setup, dimension: dimensionOf(line), repeat: repeat[line] ?? 0 };
      const before = keys[keys.length - 1];
      if (before !== undefined && inOrder(before, key) > 0) sorted = false;
      keys.push(key);
    }
    if (!sorted) keys.sort(inOrder);
    const name = (label: number) => labels.all[label] ?? '';
    const numbers = new Map([...rounds.values()].map((round, index) => [round, piece.rounds.length + index]));
    const since = new Map<number, number>();
    let first: Begun | null = null;
    for (let setup = firstSetup; setup < setups.count; setup++) {
      const round = roundOf[setup - firstSetup];
      const hung = {
        at: setups.hungAt[setup] ?? 0,
        label: setups.label[setup] ?? 0,
        technician: setups.technician[setup] ?? 0,
      };
      since.set(hung.technician, Math.min(hung.at, since.get(hung.technician) ?? Infinity));
      if (isBefore(hung, first, name)) first = hung;
      if (round === undefined) continue;
      setups.round[setup] = numbers.get(round) ?? 0;
      if (isBefore(hung, round.first, name)) round.first = hung;
    }
    if (first === null) return;
    const last = [...rounds.values()].reduce((a, b) => (order(b) > order(a) ? b : a));
    piece.jobs.push({
      ...{ number: table.jobs[job] ?? '', sheet: table.sheetOf(job), openedAt: first.at, lastReadAt },
      ...{ lastStage: last.stage, lastAttempt: last.attempt, technician: first.technician },
      ...{ rounds: rounds.size, setups: setups.count - firstSetup, readings: keys.length, hands: [...since] },
    });
    for (const { first: hung, ...round } of rounds.values())
      piece.rounds.push({ ...round, technician: hung?.technician ?? 0, startedAt: hung?.at ?? 0 });
    this.#layObservations(keys, (setup) => roundOf[setup - firstSetup]?.clearance ?? null, piece);
  }

  /** Numbers for the dimensions of a job: the file's, or places among the dimensions of all that have none. */
  #dimensions(job: number, piece: NewRows): (line: number) => number {
    const name = this.table.sheetOf(job);
    const { statedAt } = this.table.lines;
    if (name === null) {
      const own: Dimension[] = [];
      const before = piece.own.reduce((sum, { dimensions }) => sum + dimensions.length, 0);
      const places = new Map<string, number>();
      piece.own.push({ job: piece.jobs.length, dimensions: own });
      return (line) => {
        const dimension = this.table.dimensionAt(line);
        const key = dimensionKey(dimension);
        const known = places.get(key);
        if (known !== undefined) return known;
        const place = -1 - before - own.length;
        own.push(dimension);
        places.set(key, place);
        return place;
      };
    }
    const of = this.named.dimensionsOf(name);
    return (line) => of.number(statedAt[line] ?? 0, () => dimensionKey(this.table.dimensionAt(line)));
  }

  /** @param keys in order */
  #layObservations(
    keys: readonly Key[],
    clearanceOf: (setup: number) => number | null,
    piece: NewRows,
  ): void {
    const { table } = this;
    const { value, takenAt, asideAt, asides, line: lineOf } = table.lines;
    const { observations, readings } = piece;
    const deviations: number[] = [];
    let proved = new Map<StoredSide, { cause: Cause; met: number; at: number }>();
    for (let start = 0, end = 0; start < keys.length; start = end) {
      const key = keys[start];
      if (key === undefined) break;
      const { setup, dimension } = key;
      const stated = table.dimensionAt(key.line);
      const { quantity, nominal } = stated;
      const clearance = clearanceOf(setup);
      const observation = observations.count++;
      let [first, met] = [Infinity, Infinity];
      let cause: Cause | null = null;
      deviations.length = 0;
      for (; end < keys.length; end++) {
        const next = keys[end];
        if (next?.setup !== setup || next.dimension !== dimension) break;
        const { line } = next;
        const [read, at] = [value[line] ?? 0, takenAt[line] ?? 0];
        deviations.push(deviationOf({ quantity, nominal, clearance: clearance ?? 0, value: read }));
        if (at < first) first = at;
        if (line < met) met = line;
        cause ??= asides.all[asideAt[line] ?? 0]?.cause ?? null;
        readings.observation[readings.count] = observation;
        readings.repeat[readings.count] = next.repeat;
        readings.value[readings.count] = read;
        readings.takenAt[readings.count] = at;
        readings.line[readings.count] = lineOf[line] ?? 0;
        readings.count++;
      }
      const { n, mean, ss } = spreadOf(deviations);
      observations.setup[observation] = setup;
      observations.dimension[observation] = dimension;
      observations.n[observation] = n;
      observations.mean[observation] = meanRead({ ...stated, deviation: mean }, clearance);
      observations.deviation[observation] = mean;
      observations.ss[observation] = ss;
      observations.takenAt[observation] = first;
      observations.cause[observation] = cause === null ? -1 : CAUSES.indexOf(cause);
      if (cause !== null) {
        // Of several dimensions of a side the one that the file names last says when it was proved.
        const side = storedSide(stated.side);
        if (met > (proved.get(side)?.met ?? -1)) proved.set(side, { cause, met, at: first });
      }
      if (proved.size === 0 || keys[end]?.setup === setup) continue;
      for (const [side, { cause, at }] of proved)
        piece.proved.push({ setup, side, cause: CAUSES.indexOf(cause), at });
      proved = new Map();
    }
  }
}

interface Key {
  line: number;
  setup: number;
  dimension: number;
  repeat: number;
}

/** By setup, dimension and repeat; the dimensions of a job's own sheet in the order they are met. */
const inOrder = (a: Key, b: Key) =>
  a.setup - b.setup || Math.abs(a.dimension) - Math.abs(b.dimension) || a.repeat - b.repeat;

/** By time, then label. */
function isBefore(setup: Begun, other: Begun | null, name: (label: number) => string): boolean {
  if (other === null || setup.at < other.at) return true;
  return setup.at === other.at && name(setup.label) < name(other.label);
}

const order = ({ stage, attempt }: Round) => (stage === 'after' ? 1e6 : 0) + attempt;

/** Room for so many lines. */
function emptyRows(lines: number): NewRows {
  const ints = () => new Int32Array(lines);
  const doubles = () => new Float64Array(lines);
  return {
    ...{ jobs: [], rounds: [], own: [], proved: [] },
    named: { technicians: [], gauges: [], labels: [], dimensions: [] },
    setups: {
      ...{ count: 0, job: ints(), round: ints(), label: ints(), technician: ints(), gauge: ints() },
      hungAt: doubles(),
    },
    observations: {
      ...{ count: 0, setup: ints(), dimension: ints(), n: ints(), mean: doubles(), deviation: doubles() },
      ...{ ss: doubles(), takenAt: doubles(), cause: new Int8Array(lines) },
    },
    readings: {
      ...{ count: 0, observation: ints(), repeat: ints(), value: doubles(), takenAt: doubles() },
      line: ints(),
    },
  };
}

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
import { LinesInOrder } from './lines-in-order';
import { NamedSoFar } from './named-so-far';
import { CAUSES, type NewRoundRow, type NewRows } from './new-rows';

const NONE = -1;

/** A round of a job, with what is only known once all its lines are seen. */
interface Round extends NewRoundRow {
  /** Its number in the file, and in this piece. */
  number: number;
  place: number;
  /** The setup of the piece that was hung first in it. */
  first: number;
}

/**
 * Lays out jobs of a file of which nothing is stored yet, with their collapsed form: nothing can stand beside them, so
 * nothing has to be looked up. What comes of it is what `write-batch.ts` writes of the same readings;
 * `tests/property/store/new-jobs.test.ts` holds both to each other.
 */
export class NewJobs {
  readonly #named = new NamedSoFar();
  /** Of a label: the job in which it was met last, and which setup of the piece it is there. */
  #job = new Int32Array(0);
  #setup = new Int32Array(0);
  #count = 0;
  readonly #keys = new LinesInOrder();

  /** @param table the whole file, or one part of it after another. */
  layOut(table: ReadingTable, jobs: readonly number[]): NewRows {
    const piece = emptyRows(jobs.reduce((sum, job) => sum + table.linesOf(job).length, 0));
    const labels = table.lines.setups.all.length;
    if (labels > this.#job.length) {
      const grown = (from: Int32Array) => {
        const to = new Int32Array(2 * labels);
        to.set(from);
        return to;
      };
      [this.#job, this.#setup] = [grown(this.#job), grown(this.#setup)];
    }
    for (const job of jobs) this.#lay(table, job, piece);
    piece.named = this.#named.take(table.lines);
    return piece;
  }

  #lay(table: ReadingTable, job: number, piece: NewRows): void {
    const { setups } = piece;
    const firstSetup = setups.count;
    const { rounds, roundOf, lastReadAt } = this.#laySetups(table, job, piece);
    const labels = table.lines.setups.all;
    const { technician, hungAt } = setups;
    const since = new Map<number, number>();
    let first = NONE;
    for (let setup = firstSetup; setup < setups.count; setup++) {
      const hand = technician[setup] ?? 0;
      const at = hungAt[setup] ?? 0;
      const before = since.get(hand);
      if (before === undefined || at < before) since.set(hand, at);
      if (isBefore(setup, first, setups, labels)) first = setup;
      const round = roundOf[setup - firstSetup];
      if (round === undefined) continue;
      setups.round[setup] = round.place;
      if (isBefore(setup, round.first, setups, labels)) round.first = setup;
    }
    if (first === NONE) return;
    const last = rounds.reduce((a, b) => (order(b) > order(a) ? b : a));
    piece.jobs.push({
      number: table.jobs[job] ?? '',
      sheet: table.sheetOf(job),
      openedAt: hungAt[first] ?? 0,
      lastReadAt,
      lastStage: last.stage,
      lastAttempt: last.attempt,
      technician: technician[first] ?? 0,
      rounds: rounds.length,
      setups: setups.count - firstSetup,
      readings: this.#keys.count,
      hands: [...since],
    });
    for (const { job: at, stage, attempt, clearance, first: hung } of rounds) {
      const startedAt = hungAt[hung] ?? 0;
      piece.rounds.push({ job: at, stage, attempt, clearance, technician: technician[hung] ?? 0, startedAt });
    }
    this.#keys.sort();
    this.#layObservations(table, (setup) => roundOf[setup - firstSetup]?.clearance ?? null, piece);
  }

  /** Lays out the setups of a job, and keeps its lines to be put in order. */
  #laySetups(table: ReadingTable, job: number, piece: NewRows) {
    const { setupAt, placeAt, handAt, places, hands, takenAt, repeat } = table.lines;
    const { setups } = piece;
    const stamp = ++this.#count;
    const jobAt = piece.jobs.length;
    const lines = table.linesOf(job);
    const dimensionOf = this.#dimensions(table, job, piece);
    const rounds: Round[] = [];
    const roundOf: Round[] = [];
    let round: Round | undefined;
    let lastReadAt = -Infinity;
    this.#keys.begin(lines.length);
    for (let k = 0; k < lines.length; k++) {
      const line = lines[k] ?? 0;
      const label = setupAt[line] ?? 0;
      const place = places.all[placeAt[line] ?? 0];
      const hand = hands.all[handAt[line] ?? 0];
      if (place === undefined || hand === undefined)
        throw new RangeError('A line of a table has all its numbers.');
      if (round?.number !== place.round) round = rounds.find(({ number }) => number === place.round);
      if (round === undefined) {
        const { stage, attempt, round: number } = place;
        round = {
          number,
          place: piece.rounds.length + rounds.length,
          job: jobAt,
          stage,
          attempt,
          clearance: null,
          technician: 0,
          startedAt: 0,
          first: NONE,
        };
        rounds.push(round);
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
      this.#keys.add(line, setup, dimensionOf(line), repeat[line] ?? 0);
    }
    return { rounds, roundOf, lastReadAt };
  }

  /** Numbers for the dimensions of a job: the file's, or places among the dimensions of all that have none. */
  #dimensions(table: ReadingTable, job: number, piece: NewRows): (line: number) => number {
    const name = table.sheetOf(job);
    const { statedAt } = table.lines;
    if (name === null) {
      const own: Dimension[] = [];
      const before = piece.own.reduce((sum, { dimensions }) => sum + dimensions.length, 0);
      const places = new Map<string, number>();
      piece.own.push({ job: piece.jobs.length, dimensions: own });
      return (line) => {
        const dimension = table.dimensionAt(line);
        const key = dimensionKey(dimension);
        const known = places.get(key);
        if (known !== undefined) return known;
        const place = -1 - before - own.length;
        own.push(dimension);
        places.set(key, place);
        return place;
      };
    }
    const of = this.#named.dimensionsOf(name);
    return (line) => {
      const stated = statedAt[line] ?? 0;
      return of.numberOf(stated) ?? of.name(stated, dimensionKey(table.dimensionAt(line)));
    };
  }

  /** Lays out the readings of a job and what they come to, its lines being in order. */
  #layObservations(table: ReadingTable, clearanceOf: (setup: number) => number | null, piece: NewRows): void {
    const { value, takenAt, asideAt, asides, line: lineOf } = table.lines;
    const { observations, readings } = piece;
    const keys = this.#keys;
    let proved = new Map<StoredSide, { cause: Cause; met: number; at: number }>();
    for (let start = 0, end = 0; start < keys.count; start = end) {
      const setup = keys.setup[start] ?? 0;
      const dimension = keys.dimension[start] ?? 0;
      const { quantity, nominal, side } = table.dimensionAt(keys.line[start] ?? 0);
      const clearance = clearanceOf(setup);
      const observation = observations.count++;
      let first = Infinity;
      let met = Infinity;
      let cause: Cause | null = null;
      // Most are read once: then nothing is to be collapsed, and nothing is made to do so.
      let only = 0;
      let deviations: number[] | null = null;
      for (end = start; end < keys.count; end++) {
        if (keys.setup[end] !== setup || keys.dimension[end] !== dimension) break;
        const line = keys.line[end] ?? 0;
        const read = value[line] ?? 0;
        const at = takenAt[line] ?? 0;
        const deviation = deviationOf({ quantity, nominal, clearance: clearance ?? 0, value: read });
        if (end === start) only = deviation;
        else (deviations ??= [only]).push(deviation);
        if (at < first) first = at;
        if (line < met) met = line;
        cause ??= asides.all[asideAt[line] ?? 0]?.cause ?? null;
        const reading = readings.count++;
        readings.observation[reading] = observation;
        readings.repeat[reading] = keys.repeat[end] ?? 0;
        readings.value[reading] = read;
        readings.takenAt[reading] = at;
        readings.line[reading] = lineOf[line] ?? 0;
      }
      const { n, mean, ss } = deviations === null ? { n: 1, mean: only, ss: 0 } : spreadOf(deviations);
      observations.setup[observation] = setup;
      observations.dimension[observation] = dimension;
      observations.n[observation] = n;
      observations.mean[observation] = meanRead({ quantity, nominal, deviation: mean }, clearance);
      observations.deviation[observation] = mean;
      observations.ss[observation] = ss;
      observations.takenAt[observation] = first;
      observations.cause[observation] = cause === null ? -1 : CAUSES.indexOf(cause);
      if (cause !== null) {
        // Of several dimensions of a side the one that the file names last says when it was proved.
        const of = storedSide(side);
        if (met > (proved.get(of)?.met ?? -1)) proved.set(of, { cause, met, at: first });
      }
      if (proved.size === 0 || (end < keys.count && keys.setup[end] === setup)) continue;
      for (const [of, { cause: known, at }] of proved)
        piece.proved.push({ setup, side: of, cause: CAUSES.indexOf(known), at });
      proved = new Map();
    }
  }
}

/** By time, then label; whatever is hung is before none. */
function isBefore(
  setup: number,
  other: number,
  { hungAt, label }: NewRows['setups'],
  labels: readonly string[],
): boolean {
  if (other === NONE) return true;
  const at = hungAt[setup] ?? 0;
  const then = hungAt[other] ?? 0;
  return at < then || (at === then && (labels[label[setup] ?? 0] ?? '') < (labels[label[other] ?? 0] ?? ''));
}

const order = ({ stage, attempt }: Round) => (stage === 'after' ? 1e6 : 0) + attempt;

/** Room for so many lines. Written out in full: objects that are put together of others have a shape of their own each time. */
function emptyRows(lines: number): NewRows {
  const ints = () => new Int32Array(lines);
  const doubles = () => new Float64Array(lines);
  return {
    named: { technicians: [], gauges: [], labels: [], dimensions: [] },
    jobs: [],
    rounds: [],
    own: [],
    setups: {
      count: 0,
      job: ints(),
      round: ints(),
      label: ints(),
      technician: ints(),
      gauge: ints(),
      hungAt: doubles(),
    },
    observations: {
      count: 0,
      setup: ints(),
      dimension: ints(),
      n: ints(),
      mean: doubles(),
      deviation: doubles(),
      ss: doubles(),
      takenAt: doubles(),
      cause: new Int8Array(lines),
    },
    readings: {
      count: 0,
      observation: ints(),
      repeat: ints(),
      value: doubles(),
      takenAt: doubles(),
      line: ints(),
    },
    proved: [],
  };
}

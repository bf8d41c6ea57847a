import type { ByJob } from './by-job';
import { UNNUMBERED, type LineTable } from './line-table';
import type { SheetValues } from './sheet-values';
import { thing } from './names';

/** More than repeats can be: see `COUNT_RANGE`. */
const REPEATS = 16_384;
/** '' and both sides. */
const SIDES = 3;
const NONE = -1;

/**
 * Whether no rule across the lines of a job refuses one, without making the lines: the rules themselves are asked
 * only where the answer is no, and name the faults. `tests/property/measure/plain-and-fast` holds both to each other.
 */
export function jobsAreSound(
  table: LineTable,
  lines: ByJob,
  sheets: Int32Array,
  values: SheetValues,
): boolean {
  const setups = new SetupsOfJob(table.setups.all.length);
  const rounds = new RoundsOfFile(table.numbers.rounds);
  const { order } = lines;
  const names = table.dimensions.all.length;
  const nominals = new Map<number, number | null>();
  const repeats = new Set<number>();
  for (let job = lines.first; job < lines.end; job++) {
    const sheet = sheets[job - lines.first] ?? -1;
    const [begin, end] = [lines.begin(job), lines.endOf(job)];
    setups.begin(job);
    nominals.clear();
    repeats.clear();
    // Beyond this a number would not tell one repeat from the next.
    if (((end - begin) * names + names) * REPEATS > Number.MAX_SAFE_INTEGER) return false;
    for (let k = begin; k < end; k++) {
      const at = order[k] ?? 0;
      const place = thing(table.places.all, table.placeAt[at] ?? 0);
      const hand = thing(table.hands.all, table.handAt[at] ?? 0);
      const aside = thing(table.asides.all, table.asideAt[at] ?? 0);
      const stated = thing(table.stated.all, values.of(job, sheet, table.statedAt[at] ?? 0));
      const setup = setups.of(table.setupAt[at] ?? 0, place.round, hand.technician, hand.gauge);
      if (setup === NONE) return false;
      const side = stated.side === null ? 0 : stated.side === 'L' ? 1 : 2;
      if (aside.cause !== null && !setups.proves(setup, side, aside.cause)) return false;
      const key = setup * names + stated.name;
      if (stated.quantity === 'height') {
        if (!setups.hangsAt(setup, side, stated.name)) return false;
        if (!rounds.hasHeight(place.round, side, aside.clearance)) return false;
        if (stated.zero === true && !rounds.hasZero(place.round, side, stated.station ?? 0)) return false;
      } else if (stated.quantity === 'length') {
        const before = nominals.get(key);
        if (before === undefined) nominals.set(key, stated.nominal);
        else if (before !== stated.nominal) return false;
      }
      const repeat = table.repeat[at] ?? UNNUMBERED;
      if (repeat === UNNUMBERED) continue;
      const reading = key * REPEATS + repeat;
      if (repeats.has(reading)) return false;
      repeats.add(reading);
    }
  }
  return rounds.allHaveTwoZeros();
}

/** The setups of one job after another, by a number within the job. */
class SetupsOfJob {
  private readonly stamp: Int32Array;
  private readonly within: Int32Array;
  private count = 0;
  private job = 0;
  private readonly round: number[] = [];
  private readonly technician: number[] = [];
  private readonly gauge: number[] = [];
  private readonly points: number[] = [];
  private readonly causes: (string | null)[] = [];

  constructor(labels: number) {
    this.stamp = new Int32Array(labels);
    this.within = new Int32Array(labels);
  }

  begin(job: number): void {
    this.job = job + 1;
    this.count = 0;
  }

  /** The setup of this label, or −1 where it is another round's, hand's or gauge's. */
  of(label: number, round: number, technician: number, gauge: number): number {
    if (this.stamp[label] === this.job) {
      const setup = this.within[label] ?? 0;
      const same =
        this.round[setup] === round && this.technician[setup] === technician && this.gauge[setup] === gauge;
      return same ? setup : NONE;
    }
    const setup = this.count++;
    this.stamp[label] = this.job;
    this.within[label] = setup;
    this.round[setup] = round;
    this.technician[setup] = technician;
    this.gauge[setup] = gauge;
    for (let side = 0; side < SIDES; side++) {
      this.points[setup * SIDES + side] = NONE;
      this.causes[setup * SIDES + side] = null;
    }
    return setup;
  }

  /** A gauge hangs at one point a side. The name of a height is its point and side. */
  hangsAt(setup: number, side: number, name: number): boolean {
    const at = setup * SIDES + side;
    if (this.points[at] === NONE) this.points[at] = name;
    return this.points[at] === name;
  }

  proves(setup: number, side: number, cause: string): boolean {
    const at = setup * SIDES + side;
    this.causes[at] ??= cause;
    return this.causes[at] === cause;
  }
}

/** Clearance and zero stations of the rounds. */
class RoundsOfFile {
  private readonly clearance: Float64Array;
  private readonly heights: Uint8Array;
  /** Two stations for each round and side. */
  private readonly zeros: Float64Array;

  private readonly first: number;

  constructor({ first, end }: LineTable['numbers']['rounds']) {
    const rounds = end - first;
    this.first = first;
    this.clearance = new Float64Array(rounds).fill(Number.NaN);
    this.heights = new Uint8Array(rounds * SIDES);
    this.zeros = new Float64Array(rounds * SIDES * 2).fill(Number.NaN);
  }

  /** False where the round has another clearance. */
  hasHeight(number: number, side: number, clearance: number | null): boolean {
    const round = number - this.first;
    this.heights[round * SIDES + side] = 1;
    if (clearance === null) return true;
    const before = this.clearance[round] ?? Number.NaN;
    if (Number.isNaN(before)) this.clearance[round] = clearance;
    return Number.isNaN(before) || before === clearance;
  }

  /** False where it is the third of its side. */
  hasZero(round: number, side: number, station: number): boolean {
    const at = ((round - this.first) * SIDES + side) * 2;
    for (let k = at; k < at + 2; k++) {
      const there = this.zeros[k] ?? Number.NaN;
      if (there === station) return true;
      if (!Number.isNaN(there)) continue;
      this.zeros[k] = station;
      return true;
    }
    return false;
  }

  allHaveTwoZeros(): boolean {
    return this.heights.every((has, at) => has === 0 || !Number.isNaN(this.zeros[at * 2 + 1] ?? Number.NaN));
  }
}

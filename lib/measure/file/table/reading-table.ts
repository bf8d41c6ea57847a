import type { Dimension, GaugeKind, Reading } from '@/lib/measure/types';
import type { ByJob } from './by-job';
import { UNNUMBERED, type LineTable, type Stated } from './line-table';
import type { SheetValues } from './sheet-values';
import { thing } from './names';
import { readingOf } from './reading-of';

/** A dimension that lines state, with nothing left out. */
export interface TableDimension extends Dimension {
  /** The same for two lengths that share it and are told apart by their sheet value. */
  name: number;
}

/**
 * The readings of a file without faults, each in some 45 bytes: made one by one as they are asked for, in the file's
 * order or job by job.
 */
export class ReadingTable implements Iterable<Reading> {
  /** Clearance by round, from the table's first on; 0 where no line of it states one. */
  private readonly clearances: Float64Array;
  private readonly firstRound: number;

  constructor(
    readonly lines: LineTable,
    readonly byJob: ByJob,
    private readonly sheets: Int32Array,
    private readonly kinds: readonly (GaugeKind | null)[],
    readonly values: SheetValues,
  ) {
    this.clearances = clearances(lines);
    this.firstRound = lines.numbers.rounds.first;
    for (let job = byJob.first; job < byJob.end; job++) {
      const own = this.linesOf(job);
      const sheet = sheets[job - byJob.first] ?? -1;
      for (const at of own) lines.statedAt[at] = values.of(job, sheet, lines.statedAt[at] ?? 0);
      numberRepeats(lines, own);
    }
  }

  get size(): number {
    return this.lines.size;
  }

  /** Numbers of the jobs, in the order they are first met in the file. */
  get jobs(): readonly string[] {
    return this.lines.jobs.all;
  }

  /** Lines of a job, in file order. */
  linesOf(job: number): Int32Array {
    return this.byJob.order.subarray(this.byJob.begin(job), this.byJob.endOf(job));
  }

  sheetOf(job: number): string | null {
    const sheet = this.sheets[job - this.byJob.first] ?? -1;
    return sheet < 0 ? null : thing(this.lines.sheets.all, sheet);
  }

  kindOf(gauge: number): GaugeKind | null {
    return this.kinds[gauge] ?? null;
  }

  dimensionAt(at: number): TableDimension {
    const dimension = thing(this.lines.stated.all, this.lines.statedAt[at] ?? 0);
    if (!leavesNothingOut(dimension))
      throw new RangeError('A dimension of an accepted file leaves nothing out.');
    return dimension;
  }

  clearanceOf(round: number): number {
    return this.clearances[round - this.firstRound] ?? 0;
  }

  reading(at: number): Reading {
    return readingOf(this, at);
  }

  readingsOf(job: number): Reading[] {
    return Array.from(this.linesOf(job), (at) => this.reading(at));
  }

  *[Symbol.iterator](): Generator<Reading, void> {
    for (let at = 0; at < this.size; at++) yield this.reading(at);
  }
}

const leavesNothingOut = (stated: Stated): stated is Stated & TableDimension =>
  stated.zero !== null && stated.nominal !== null && stated.tolerance !== null;

function clearances({ numbers, places, placeAt, asides, asideAt, stated, statedAt, size }: LineTable) {
  const { first, end } = numbers.rounds;
  const found = new Float64Array(end - first);
  for (let at = 0; at < size; at++) {
    const { clearance } = thing(asides.all, asideAt[at] ?? 0);
    if (clearance === null || clearance === 0) continue;
    if (thing(stated.all, statedAt[at] ?? 0).quantity !== 'height') continue;
    found[thing(places.all, placeAt[at] ?? 0).round - first] = clearance;
  }
  return found;
}

/** Repeats without a number are numbered in file order, past the numbers that are taken. */
function numberRepeats(lines: LineTable, own: Int32Array): void {
  const { repeat, setupAt, statedAt, stated, dimensions } = lines;
  if (own.every((at) => repeat[at] !== UNNUMBERED)) return;
  const keyOf = (at: number) =>
    (setupAt[at] ?? 0) * dimensions.all.length + thing(stated.all, statedAt[at] ?? 0).name;
  const taken = new Map<number, Set<number>>();
  for (const at of own) {
    const key = keyOf(at);
    const numbers = taken.get(key) ?? new Set();
    taken.set(key, numbers.add(repeat[at] ?? UNNUMBERED));
  }
  const next = new Map<number, number>();
  for (const at of own) {
    if (repeat[at] !== UNNUMBERED) continue;
    const key = keyOf(at);
    let number = next.get(key) ?? 1;
    while (taken.get(key)?.has(number) === true) number++;
    repeat[at] = number;
    next.set(key, number + 1);
  }
}

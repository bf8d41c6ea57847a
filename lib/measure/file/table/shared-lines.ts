import type { GaugeKind, Reading } from '@/lib/measure/types';
import { thing } from './names';
import { type AgreedLines, type LineColumns, readingOf, type ToldLines } from './reading-of';
import type { ReadingTable, TableDimension } from './reading-table';

/**
 * The readings of an accepted file as plain data, to be handed to other threads: columns of numbers in memory that all
 * of them see, so that only what the numbers stand for is copied.
 */
export interface SharedLines {
  /** How many there are. */
  size: number;
  lines: ToldLines;
  /** Lines, job after job in file order, and where each job begins; one more than there are jobs. */
  order: Int32Array;
  from: Int32Array;
  /** By job, gauge, round, and number of what a line states. */
  sheets: readonly (string | null)[];
  kinds: readonly (GaugeKind | null)[];
  clearances: Float64Array;
  dimensions: readonly (TableDimension | null)[];
}

/** @param table of a whole file. */
export function sharedLines(table: ReadingTable): SharedLines {
  const { jobs, sheets, technicians, gauges, setups, places, hands, asides, rounds } = table.lines;
  const { byJob } = table;
  return {
    size: table.size,
    lines: {
      ...sharedColumns(table.lines, table.size),
      jobs: listed(jobs),
      sheets: listed(sheets),
      technicians: listed(technicians),
      gauges: listed(gauges),
      setups: listed(setups),
      places: listed(places),
      hands: listed(hands),
      asides: listed(asides),
    },
    order: ints(byJob.order),
    from: ints(Int32Array.from({ length: jobs.all.length + 1 }, (_, job) => byJob.begin(job))),
    sheets: jobs.all.map((_, job) => table.sheetOf(job)),
    kinds: gauges.all.map((_, gauge) => table.kindOf(gauge)),
    clearances: doubles(Float64Array.from({ length: rounds.size }, (_, round) => table.clearanceOf(round))),
    dimensions: dimensionsOf(table),
  };
}

/** Only its list: what finds a thing by its name is not wanted any more. */
const listed = <Thing>({ all }: { all: readonly Thing[] }) => ({ all });

function sharedColumns(lines: LineColumns, size: number): LineColumns {
  return {
    line: ints(lines.line.subarray(0, size)),
    placeAt: ints(lines.placeAt.subarray(0, size)),
    handAt: ints(lines.handAt.subarray(0, size)),
    setupAt: ints(lines.setupAt.subarray(0, size)),
    statedAt: ints(lines.statedAt.subarray(0, size)),
    asideAt: ints(lines.asideAt.subarray(0, size)),
    repeat: ints(lines.repeat.subarray(0, size)),
    takenAt: doubles(lines.takenAt.subarray(0, size)),
    value: doubles(lines.value.subarray(0, size)),
  };
}

function ints(values: Int32Array): Int32Array {
  const copy = new Int32Array(new SharedArrayBuffer(values.byteLength));
  copy.set(values);
  return copy;
}

function doubles(values: Float64Array): Float64Array {
  const copy = new Float64Array(new SharedArrayBuffer(values.byteLength));
  copy.set(values);
  return copy;
}

/** By what lines state; null what none states any more, since its sheet says more of it. */
function dimensionsOf(table: ReadingTable): (TableDimension | null)[] {
  const found = new Map<number, TableDimension>();
  const { stated, statedAt } = table.lines;
  for (let at = 0; at < table.size; at++) {
    const number = statedAt[at] ?? 0;
    if (!found.has(number)) found.set(number, table.dimensionAt(at));
  }
  return stated.all.map((_, number) => found.get(number) ?? null);
}

/** Makes readings of them, job by job. */
export class SharedReadings implements AgreedLines {
  readonly lines: ToldLines;

  constructor(private readonly shared: SharedLines) {
    this.lines = shared.lines;
  }

  /** How many there are. */
  get size(): number {
    return this.shared.size;
  }

  /** Numbers of the jobs in the order in which `collapse` gives them: by their first reading, then their number. */
  get jobsInOrder(): number[] {
    const { lines } = this;
    const first = Float64Array.from(lines.jobs.all, (_, job) =>
      this.linesOf(job).reduce((least, at) => Math.min(least, lines.takenAt[at] ?? 0), Infinity),
    );
    const name = (job: number) => thing(lines.jobs.all, job);
    return [...first.keys()].sort(
      (a, b) => (first[a] ?? 0) - (first[b] ?? 0) || (name(a) < name(b) ? -1 : 1),
    );
  }

  readingsOf(job: number): Reading[] {
    return Array.from(this.linesOf(job), (at) => readingOf(this, at));
  }

  sheetOf(job: number): string | null {
    return this.shared.sheets[job] ?? null;
  }

  kindOf(gauge: number): GaugeKind | null {
    return this.shared.kinds[gauge] ?? null;
  }

  dimensionAt(at: number): TableDimension {
    const dimension = this.shared.dimensions[this.lines.statedAt[at] ?? 0] ?? null;
    if (dimension === null)
      throw new RangeError(`No dimension is stated on line ${this.lines.line[at] ?? 0}.`);
    return dimension;
  }

  clearanceOf(round: number): number {
    return this.shared.clearances[round] ?? 0;
  }

  private linesOf(job: number): Int32Array {
    const { order, from } = this.shared;
    return order.subarray(from[job] ?? 0, from[job + 1] ?? 0);
  }
}

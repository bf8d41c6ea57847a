import { KnownSheets } from '../known-sheets';
import type { ReadOptions } from '../options';
import { kindOfGauges } from './by-job';
import type { LineTable } from './line-table';
import { thing } from './names';
import type { ReadingTable } from './reading-table';
import { soundReadings } from './settle';
import { SheetValues, type Saying } from './sheet-values';

/** A file that is being read: its sound lines so far, without those that were taken out, and whether all were. */
export interface BeingRead {
  readonly table: LineTable;
  readonly sound: boolean;
  /** Takes the first lines out: the file is not held to the rules across lines any more by whoever reads it. */
  takeOut(end: number): LineTable;
}

/** Whole jobs, by their numbers in the file, with all their readings. */
export interface JobsRead {
  jobs: number[];
  readings: ReadingTable;
}

/** What a line of a named sheet says of a dimension, and what it was taken to mean. */
interface Taken extends Saying {
  complete: number;
}

/**
 * Takes the jobs out of a file while it is still being read, so that it is never held as a whole. A job is taken to be
 * whole when lines of another follow; what its lines leave out of a sheet is filled in from the lines beside it alone.
 * Whether a later line said otherwise shows at the end of the file: what was taken out counts for nothing unless `holds`
 * says so, and then the file has to be read once more.
 */
export class JobsAhead {
  /** True once a line was met after which nothing more is handed out. */
  givenUp = false;
  readonly #known: KnownSheets;
  readonly #taken = new Map<string, Taken>();
  /** Lines that were looked through. */
  #seen = 0;
  /** The job of the last line, its first line, and whether such lines were taken out. */
  #job = -1;
  #begin = 0;
  #isOut = false;

  constructor(
    private readonly reading: BeingRead,
    known: ReadOptions['knownSheets'],
  ) {
    this.#known = new KnownSheets(known);
  }

  /** Whole jobs that were read since the last time, where they have so many lines together; else null. */
  take(least: number): JobsRead | null {
    this.#look();
    return this.givenUp || this.#begin < least ? null : this.#settle(this.#begin);
  }

  /** All that was not handed out yet, once no line follows; null where there is nothing. */
  takeRest(): JobsRead | null {
    this.#look();
    if (this.givenUp || this.#seen === 0) return null;
    this.#isOut = true;
    return this.#settle(this.#seen);
  }

  /** Whether the file, read to its end, says of all its lines what they were taken to say. */
  holds(): boolean {
    const { table, sound } = this.reading;
    if (this.givenUp || !sound || table.size > 0 || kindOfGauges(table) === null) return false;
    const all = [...this.#taken.values()];
    const values = new SheetValues(table, this.#known, all);
    return (
      values.sound &&
      all.every(({ job, sheet, stated, complete }) => values.of(job, sheet, stated) === complete)
    );
  }

  /** Jobs and rounds are numbered as they are met: where none is met again, numbers never fall. */
  #look(): void {
    const { table, sound } = this.reading;
    if (!sound) this.givenUp = true;
    if (this.givenUp) return;
    for (let at = this.#seen; at < table.size; at++) {
      const { job } = thing(table.places.all, table.placeAt[at] ?? 0);
      const goesOn = job === this.#job;
      if (goesOn ? this.#isOut : job < this.#job) {
        this.givenUp = true;
        return;
      }
      if (goesOn) continue;
      this.#job = job;
      this.#begin = at;
      this.#isOut = false;
    }
    this.#seen = table.size;
  }

  #settle(end: number): JobsRead | null {
    const readings = soundReadings(this.reading.takeOut(end), this.#known);
    this.#seen -= end;
    this.#begin = 0;
    if (readings === null || !this.#agrees(readings.values)) {
      this.givenUp = true;
      return null;
    }
    const { first, end: last } = readings.lines.numbers.jobs;
    return { jobs: Array.from({ length: last - first }, (_, job) => first + job), readings };
  }

  /** Keeps what lines of named sheets were taken to mean; false where they meant something else before. */
  #agrees(values: SheetValues): boolean {
    return values.sayings.every((saying) => {
      const { sheet, job, stated } = saying;
      if (sheet < 0) return true;
      const complete = values.of(job, sheet, stated);
      const key = `${sheet} ${stated}`;
      const before = this.#taken.get(key);
      if (before === undefined) this.#taken.set(key, { ...saying, complete });
      return before === undefined || before.complete === complete;
    });
  }
}

import { KnownSheets } from '../known-sheets';
import type { ReadOptions } from '../options';
import type { LineTable } from './line-table';
import { thing } from './names';
import type { ReadingTable } from './reading-table';
import { soundReadings } from './settle';

/** A file that is being read: its sound lines so far, and whether all were. */
export interface BeingRead {
  readonly table: LineTable;
  readonly sound: boolean;
}

/** Whole jobs, by their numbers in the file, with all their readings. */
export interface JobsRead {
  jobs: number[];
  readings: ReadingTable;
}

/** What was taken ahead of some lines, to be held against what the whole file says of them. */
interface Taken {
  from: number;
  statedAt: Int32Array;
  repeat: Int32Array;
  /** Of the jobs and rounds of these lines: the first, and what was taken to be so. */
  firstJob: number;
  sheets: (string | null)[];
  firstRound: number;
  clearances: Float64Array;
}

/**
 * Hands out the jobs of a file while it is still being read. A job is taken to be whole when lines of another follow;
 * what its lines leave out is filled in from the lines beside it alone. Whether a later line said otherwise shows when
 * the whole file is read: what was handed out counts for nothing unless `holdsFor` says so.
 */
export class JobsAhead {
  /** True once a line was met after which nothing more is handed out. */
  givenUp = false;
  readonly #known: KnownSheets;
  readonly #taken: Taken[] = [];
  /** Lines that were handed out, and looked through. */
  #from = 0;
  #seen = 0;
  /** The job of the last line, and its first line. */
  #job = -1;
  #begin = 0;

  constructor(
    private readonly reading: BeingRead,
    known: ReadOptions['knownSheets'],
  ) {
    this.#known = new KnownSheets(known);
  }

  /** Whole jobs that were read since the last time, where they have so many lines together; else null. */
  take(least: number): JobsRead | null {
    this.#look();
    return this.givenUp || this.#begin - this.#from < least ? null : this.#settle(this.#begin);
  }

  /** All that was not handed out yet, once no line follows; null where there is nothing. */
  takeRest(): JobsRead | null {
    this.#look();
    return this.givenUp || this.#seen === this.#from ? null : this.#settle(this.#seen);
  }

  /** Whether the file, read to its end, says of all its lines what they were taken to say. */
  holdsFor(file: ReadingTable): boolean {
    if (this.givenUp || this.#from !== file.size) return false;
    const { statedAt, repeat } = file.lines;
    return this.#taken.every(
      (one) =>
        one.statedAt.every((stated, at) => stated === statedAt[one.from + at]) &&
        one.repeat.every((number, at) => number === repeat[one.from + at]) &&
        one.sheets.every((sheet, at) => sheet === file.sheetOf(one.firstJob + at)) &&
        one.clearances.every((clearance, at) => clearance === file.clearanceOf(one.firstRound + at)),
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
      if (goesOn ? this.#begin < this.#from : job < this.#job) {
        this.givenUp = true;
        return;
      }
      if (goesOn) continue;
      this.#job = job;
      this.#begin = at;
    }
    this.#seen = table.size;
  }

  #settle(to: number): JobsRead | null {
    const from = this.#from;
    const readings = soundReadings(this.reading.table.part(from, to), this.#known);
    if (readings === null) {
      this.givenUp = true;
      return null;
    }
    const { lines } = readings;
    const place = (at: number) => thing(lines.places.all, lines.placeAt[at] ?? 0);
    const [firstJob, lastJob] = [place(0).job, place(lines.size - 1).job];
    let [firstRound, lastRound] = [Infinity, -1];
    for (let at = 0; at < lines.size; at++) {
      const { round } = place(at);
      if (round < firstRound) firstRound = round;
      if (round > lastRound) lastRound = round;
    }
    this.#taken.push({
      ...{ from, statedAt: lines.statedAt, repeat: lines.repeat, firstJob, firstRound },
      sheets: Array.from({ length: lastJob - firstJob + 1 }, (_, job) => readings.sheetOf(firstJob + job)),
      clearances: Float64Array.from({ length: lastRound - firstRound + 1 }, (_, round) =>
        readings.clearanceOf(firstRound + round),
      ),
    });
    this.#from = to;
    return { jobs: Array.from({ length: lastJob - firstJob + 1 }, (_, job) => firstJob + job), readings };
  }
}

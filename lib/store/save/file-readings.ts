import type { Reading, ReadingTable } from '@/lib/measure';
import { NewJobs } from './lay-new-jobs';
import type { NewRows } from './new-rows';
import { oneForEach } from './one-for-each';

/** Rows of the named sheets, by the sheet’s name; of their dimensions by `dimensionKey`. */
export type SheetIds = ReadonlyMap<string, { id: number; dimensions: ReadonlyMap<string, number> }>;

/** What a file names; jobs are meant by their number in it. */
export interface FileOutline {
  /** How many readings there are. */
  readonly size: number;
  /** Numbers of the jobs, in the order they are first met in the file, and how many lines each has. */
  readonly jobs: readonly string[];
  readonly lines: Int32Array;
  readonly technicians: readonly string[];
  readonly gauges: readonly string[];
  /** Labels of setups. */
  readonly labels: readonly string[];
}

/** The readings of a file without faults, on this thread or another. */
export interface FileReadings extends FileOutline {
  /** One reading for each of what the file names: see `one-for-each.ts`. */
  samples(): Promise<Reading[]>;
  readingsOf(jobs: readonly number[]): Promise<Reading[]>;
  /** All of them in the file's order. */
  all(): Promise<Reading[]>;
  /** Says which rows the file's sheets are, before anything is laid out. */
  know(sheets: SheetIds): Promise<void>;
  /** What is to be stored of jobs of which nothing is stored yet. */
  layOut(jobs: readonly number[]): Promise<NewRows>;
}

export const outlineOf = (table: ReadingTable): FileOutline => ({
  size: table.size,
  jobs: table.jobs,
  lines: Int32Array.from(table.jobs, (_, job) => table.linesOf(job).length),
  technicians: table.lines.technicians.all,
  gauges: table.lines.gauges.all,
  labels: table.lines.setups.all,
});

/** The readings of a table on this thread. */
export function tableReadings(table: ReadingTable, outline = outlineOf(table)): FileReadings {
  let newJobs: NewJobs | null = null;
  return {
    ...outline,
    samples: () => Promise.resolve(oneForEach(table)),
    readingsOf: (jobs) => Promise.resolve(jobs.flatMap((job) => table.readingsOf(job))),
    all: () => Promise.resolve([...table]),
    know(sheets) {
      newJobs = new NewJobs(table, sheets);
      return Promise.resolve();
    },
    layOut(jobs) {
      if (newJobs === null) throw new Error('The rows of the sheets are to be known first.');
      return Promise.resolve(newJobs.layOut(jobs));
    },
  };
}

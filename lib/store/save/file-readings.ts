import type { Reading, ReadingTable } from '@/lib/measure';
import { NewJobs } from './lay-new-jobs';
import type { NewRows } from './new-rows';
import { OneForEach } from './one-for-each';

/** What a file names; jobs are meant by their number in it. */
export interface FileOutline {
  /** How many readings there are. */
  readonly size: number;
  /** Numbers of the jobs, in the order they are first met in the file, and how many lines each has. */
  readonly jobs: readonly string[];
  readonly lines: Int32Array;
}

/** The readings of a file without faults, on this thread or another. */
export interface FileReadings extends FileOutline {
  /** One reading for each of what the file names: see `one-for-each.ts`. */
  samples(): Promise<Reading[]>;
  readingsOf(jobs: readonly number[]): Promise<Reading[]>;
  /** All of them in the file's order. */
  all(): Promise<Reading[]>;
  /** What is to be stored of jobs of which nothing is stored yet. */
  layOut(jobs: readonly number[]): Promise<NewRows>;
}

export const outlineOf = (table: ReadingTable): FileOutline => ({
  size: table.size,
  jobs: table.jobs,
  lines: Int32Array.from(table.jobs, (_, job) => table.linesOf(job).length),
});

/** The readings of a table on this thread. */
export function tableReadings(table: ReadingTable, outline = outlineOf(table)): FileReadings {
  const newJobs = new NewJobs();
  return {
    ...outline,
    samples: () => Promise.resolve(new OneForEach().newIn(table)),
    readingsOf: (jobs) => Promise.resolve(jobs.flatMap((job) => table.readingsOf(job))),
    all: () => Promise.resolve([...table]),
    layOut: (jobs) => Promise.resolve(newJobs.layOut(table, jobs)),
  };
}

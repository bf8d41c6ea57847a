import type { Reading, ReadingTable } from '@/lib/measure';
import { NewJobs } from './lay-new-jobs';
import type { NewRows } from './new-rows';
import { oneForEach } from './one-for-each';

/** Rows of the named sheets, by the sheet’s name; of their dimensions by `dimensionKey`. */
export type SheetIds = ReadonlyMap<string, { id: number; dimensions: ReadonlyMap<string, number> }>;

/** The readings of a file without faults, on this thread or another; jobs by their number in it. */
export interface FileReadings {
  readonly size: number;
  /** Numbers of the jobs, in the order they are first met in the file, and how many lines each has. */
  readonly jobs: readonly string[];
  readonly lines: Int32Array;
  readonly technicians: readonly string[];
  readonly gauges: readonly string[];
  /** Labels of setups. */
  readonly labels: readonly string[];
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

/** The readings of a table on this thread. */
export class TableReadings implements FileReadings {
  readonly size: number;
  readonly jobs: readonly string[];
  readonly lines: Int32Array;
  readonly technicians: readonly string[];
  readonly gauges: readonly string[];
  readonly labels: readonly string[];
  #newJobs: NewJobs | null = null;

  constructor(private readonly table: ReadingTable) {
    this.size = table.size;
    this.jobs = table.jobs;
    this.lines = Int32Array.from(table.jobs, (_, job) => table.linesOf(job).length);
    this.technicians = table.lines.technicians.all;
    this.gauges = table.lines.gauges.all;
    this.labels = table.lines.setups.all;
  }

  samples = (): Promise<Reading[]> => Promise.resolve(oneForEach(this.table));
  readingsOf = (jobs: readonly number[]): Promise<Reading[]> =>
    Promise.resolve(jobs.flatMap((job) => this.table.readingsOf(job)));
  all = (): Promise<Reading[]> => Promise.resolve([...this.table]);

  know(sheets: SheetIds): Promise<void> {
    this.#newJobs = new NewJobs(this.table, sheets);
    return Promise.resolve();
  }

  layOut(jobs: readonly number[]): Promise<NewRows> {
    if (this.#newJobs === null) throw new Error('The rows of the sheets are to be known first.');
    return Promise.resolve(this.#newJobs.layOut(jobs));
  }
}

import type { LineTable } from './line-table';
import { thing } from './names';

/** The lines of each job that a table has lines of, in file order. */
export class ByJob {
  /**
   * @param order lines, job after job.
   * @param from where a job begins in `order`, from the first job on; one more than there are jobs.
   * @param first number of the first job.
   */
  constructor(
    readonly order: Int32Array,
    private readonly from: Int32Array,
    readonly first: number,
  ) {}

  /** The number after the last job's. */
  get end(): number {
    return this.first + this.from.length - 1;
  }

  /** Where a job begins in `order`, and where the next one does. */
  begin(job: number): number {
    return this.from[job - this.first] ?? 0;
  }

  endOf(job: number): number {
    return this.from[job - this.first + 1] ?? 0;
  }
}

/** Puts the lines in order of jobs by counting: they need not stand together in the file. */
export function byJob(table: LineTable): ByJob {
  const { places, placeAt, size } = table;
  const { first, end } = table.numbers.jobs;
  const from = new Int32Array(end - first + 1);
  const jobAt = new Int32Array(size);
  for (let at = 0; at < size; at++) {
    const job = (places.all[placeAt[at] ?? 0]?.job ?? first) - first;
    jobAt[at] = job;
    from[job + 1] = (from[job + 1] ?? 0) + 1;
  }
  for (let job = 1; job < from.length; job++) from[job] = (from[job] ?? 0) + (from[job - 1] ?? 0);
  const next = from.slice();
  const order = new Int32Array(size);
  for (let at = 0; at < size; at++) {
    const job = jobAt[at] ?? 0;
    const to = next[job] ?? 0;
    order[to] = at;
    next[job] = to + 1;
  }
  return new ByJob(order, from, first);
}

/** The sheet of each job from the table's first on, by numbers; null where the lines of a job name two. */
export function sheetOfJobs(table: LineTable): Int32Array | null {
  const { jobs, places } = table.numbers;
  const sheets = new Int32Array(jobs.end - jobs.first).fill(-1);
  for (let place = places.first; place < places.end; place++) {
    const { job, sheet } = thing(table.places.all, place);
    if (sheet < 0) continue;
    const before = sheets[job - jobs.first] ?? -1;
    if (before >= 0 && before !== sheet) return null;
    sheets[job - jobs.first] = sheet;
  }
  return sheets;
}

/** The kind of each gauge, null where no line states one; null for all where two lines contradict each other. */
export function kindOfGauges({ gauges, hands }: LineTable) {
  const kinds = gauges.all.map(() => null as (typeof hands.all)[number]['kind']);
  for (const { gauge, kind } of hands.all) {
    if (kind === null) continue;
    const before = kinds[gauge] ?? null;
    if (before !== null && before !== kind) return null;
    kinds[gauge] = kind;
  }
  return kinds;
}

import type { LineTable } from './line-table';

/** The lines of each job, in file order. */
export interface ByJob {
  /** Lines, job after job. */
  order: Int32Array;
  /** Where a job begins in `order`, by its number; one more than there are jobs. */
  from: Int32Array;
}

/** Puts the lines in order of jobs by counting: they need not stand together in the file. */
export function byJob(table: LineTable): ByJob {
  const { places, placeAt, size } = table;
  const from = new Int32Array(table.jobs.all.length + 1);
  const jobAt = (at: number) => places.all[placeAt[at] ?? 0]?.job ?? 0;
  for (let at = 0; at < size; at++) {
    const next = jobAt(at) + 1;
    from[next] = (from[next] ?? 0) + 1;
  }
  for (let job = 1; job < from.length; job++) from[job] = (from[job] ?? 0) + (from[job - 1] ?? 0);
  const next = from.slice();
  const order = new Int32Array(size);
  for (let at = 0; at < size; at++) {
    const job = jobAt(at);
    const to = next[job] ?? 0;
    order[to] = at;
    next[job] = to + 1;
  }
  return { order, from };
}

/** The sheet of each job, by numbers; null where the lines of a job name two. */
export function sheetOfJobs(table: LineTable): Int32Array | null {
  const sheets = new Int32Array(table.jobs.all.length).fill(-1);
  for (const { job, sheet } of table.places.all) {
    if (sheet < 0) continue;
    const before = sheets[job] ?? -1;
    if (before >= 0 && before !== sheet) return null;
    sheets[job] = sheet;
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

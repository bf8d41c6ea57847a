import { byJob, type ByJob } from './table/by-job';
import type { ReadingTable } from './table/reading-table';
import type { LineTable } from './table/line-table';
import { thing, type Names } from './table/names';
import type { FileSummary } from './options';
import { SEPARATOR_NAMES, type Separator } from './separator';

interface FileFacts {
  name: string;
  bytes: number;
  lines: number;
  separator: Separator;
  decimalComma: boolean;
  ignoredColumns: string[];
  /** Whether the file numbers its repeats. */
  numbered: boolean;
}

/**
 * What a file holds, in counts and names; of a faulty file, what its sound lines hold.
 * @param readings null where there is a fault.
 */
export function summarise(
  table: LineTable,
  readings: ReadingTable | null,
  { numbered, ...facts }: FileFacts,
): FileSummary {
  const lines = byJob(table);
  let from = Infinity;
  let to = -Infinity;
  let tape = 0;
  const tapes = table.hands.all.map(({ gauge, kind }) => (kind ?? readings?.kindOf(gauge)) === 'tape');
  for (let at = 0; at < table.size; at++) {
    const takenAt = table.takenAt[at] ?? 0;
    if (takenAt < from) from = takenAt;
    if (takenAt > to) to = takenAt;
    if (tapes[table.handAt[at] ?? 0] === true) tape++;
  }
  return {
    ...facts,
    separator: SEPARATOR_NAMES[facts.separator],
    readings: table.size,
    jobs: table.jobs.all.length,
    rounds: table.rounds.size,
    setups: countSetups(table, lines),
    technicians: sorted(table.technicians),
    gauges: sorted(table.gauges),
    sheets: sorted(table.sheets),
    from: table.size === 0 ? null : from,
    to: table.size === 0 ? null : to,
    notes: notes(facts.ignoredColumns, tape, numbered ? [] : alike(table, lines)),
  };
}

const sorted = (names: Names) => [...names.all].sort();

function countSetups(table: LineTable, { order, from }: ByJob): number {
  const lastJob = new Int32Array(table.setups.all.length).fill(-1);
  let count = 0;
  for (let job = 0; job + 1 < from.length; job++) {
    for (let k = from[job] ?? 0; k < (from[job + 1] ?? 0); k++) {
      const setup = table.setupAt[order[k] ?? 0] ?? 0;
      if (lastJob[setup] === job) continue;
      lastJob[setup] = job;
      count++;
    }
  }
  return count;
}

function notes(ignoredColumns: readonly string[], tape: number, twins: readonly number[]): string[] {
  const found: string[] = [];
  if (ignoredColumns.length > 0) {
    found.push(`Columns that were not read: ${ignoredColumns.join(', ')}.`);
  }
  if (tape > 0) {
    found.push(
      `${tape} readings were taken with a tape: a tape alone is a quick check, never a final record.`,
    );
  }
  if (twins.length > 0) {
    const first = twins.reduce((least, line) => Math.min(least, line));
    found.push(
      `Lines that say what an earlier line says, time and value included: ${twins.length} (the first is line ${first}). They count as repeats; remove them if they were pasted twice.`,
    );
  }
  return found;
}

/** Lines of one setup and dimension with the time and value of an earlier one, by their number. */
function alike(table: LineTable, { order, from }: ByJob): number[] {
  const twins: number[] = [];
  const met = new Set<string>();
  for (let job = 0; job + 1 < from.length; job++) {
    met.clear();
    for (let k = from[job] ?? 0; k < (from[job + 1] ?? 0); k++) {
      const at = order[k] ?? 0;
      const { name } = thing(table.stated.all, table.statedAt[at] ?? 0);
      const key = `${table.setupAt[at]} ${name} ${table.takenAt[at]} ${table.value[at]}`;
      if (met.has(key)) twins.push(table.line[at] ?? 0);
      else met.add(key);
    }
  }
  return twins;
}

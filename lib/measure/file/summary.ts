import { byJob, type ByJob } from './table/by-job';
import type { GaugeKind } from '../types';
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
}

/** What is counted of the lines of a file, all at once or part by part, where no job is of two parts. */
export class LineCounts {
  readings = 0;
  setups = 0;
  from = Infinity;
  to = -Infinity;
  /** Lines that say what an earlier line says, by their number. */
  readonly alike: number[] = [];
  /** Lines of each hand, by its number. */
  readonly ofHand: number[] = [];

  /** @param numbered whether the file numbers its repeats: what is numbered is not alike. */
  add(table: LineTable, numbered: boolean): void {
    const lines = byJob(table);
    this.readings += table.size;
    this.setups += countSetups(table, lines);
    if (!numbered) for (const line of alike(table, lines)) this.alike.push(line);
    for (let at = 0; at < table.size; at++) {
      const takenAt = table.takenAt[at] ?? 0;
      if (takenAt < this.from) this.from = takenAt;
      if (takenAt > this.to) this.to = takenAt;
      const hand = table.handAt[at] ?? 0;
      this.ofHand[hand] = (this.ofHand[hand] ?? 0) + 1;
    }
  }
}

/**
 * What a file holds, in counts and names; of a faulty file, what its sound lines hold.
 * @param kindOf the kind of a gauge, where the file is without faults.
 */
export function summarise(
  { hands, jobs, rounds, technicians, gauges, sheets }: LineTable,
  counts: LineCounts,
  kindOf: (gauge: number) => GaugeKind | null,
  facts: FileFacts,
): FileSummary {
  const { readings, setups, from, to } = counts;
  const tape = hands.all.reduce(
    (sum, { gauge, kind }, hand) =>
      (kind ?? kindOf(gauge)) === 'tape' ? sum + (counts.ofHand[hand] ?? 0) : sum,
    0,
  );
  return {
    ...facts,
    separator: SEPARATOR_NAMES[facts.separator],
    readings,
    jobs: jobs.all.length,
    rounds: rounds.size,
    setups,
    technicians: sorted(technicians),
    gauges: sorted(gauges),
    sheets: sorted(sheets),
    from: readings === 0 ? null : from,
    to: readings === 0 ? null : to,
    notes: notes(facts.ignoredColumns, tape, counts.alike),
  };
}

const sorted = (names: Names) => [...names.all].sort();

function countSetups(table: LineTable, lines: ByJob): number {
  const lastJob = new Int32Array(table.setups.all.length).fill(-1);
  let count = 0;
  for (let job = lines.first; job < lines.end; job++) {
    for (let k = lines.begin(job); k < lines.endOf(job); k++) {
      const setup = table.setupAt[lines.order[k] ?? 0] ?? 0;
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
function alike(table: LineTable, lines: ByJob): number[] {
  const twins: number[] = [];
  const met = new Set<string>();
  for (let job = lines.first; job < lines.end; job++) {
    met.clear();
    for (let k = lines.begin(job); k < lines.endOf(job); k++) {
      const at = lines.order[k] ?? 0;
      const { name } = thing(table.stated.all, table.statedAt[at] ?? 0);
      const key = `${table.setupAt[at]} ${name} ${table.takenAt[at]} ${table.value[at]}`;
      if (met.has(key)) twins.push(table.line[at] ?? 0);
      else met.add(key);
    }
  }
  return twins;
}

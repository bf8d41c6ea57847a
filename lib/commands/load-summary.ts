import type { Fault, FileSummary } from '@/lib/measure';
import type { Conflict } from '@/lib/store';

/** What a file holds, in lines of text. */
export function summaryLines(summary: FileSummary): string[] {
  const { name, readings, jobs, rounds, setups, technicians, gauges, sheets, notes } = summary;
  const day = (time: number | null) => (time === null ? '' : new Date(time).toISOString().slice(0, 10));
  return [
    `${name}: ${readings} readings, ${setups} setups, ${rounds} rounds, ${jobs} jobs, ${day(summary.from)} to ${day(summary.to)}.`,
    `  Technicians ${technicians.join(', ')}; gauges ${gauges.join(', ')}; sheets ${sheets.join(', ') || 'none named'}.`,
    ...notes.map((note) => `  ${note}`),
  ];
}

/** Contradictions with what is stored, told as the faults of the file that they are. */
export const conflictFaults = (conflicts: readonly Conflict[]): Fault[] =>
  conflicts.map(({ line, column, reason }) => ({ line, column, message: reason, value: null }));

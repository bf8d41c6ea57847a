import { z } from 'zod';
import type { Fault } from '@/lib/measure';

/** One fault wherever it stands: the same column, value and reason on one line or on many. */
export const faultGroup = z.object({
  /** Runs of lines, first and last; empty where it is the whole file. At most `RUNS_KEPT`; `lines` counts all. */
  runs: z.array(z.tuple([z.number(), z.number()])),
  lines: z.number(),
  column: z.string().nullable(),
  message: z.string(),
  value: z.string().nullable(),
});

export type FaultGroup = z.infer<typeof faultGroup>;

/** Runs of lines kept of one fault: what recurs in more places than this is searched for by its value. */
export const RUNS_KEPT = 50;

/** Faults in the order of the lines on which they first stand; a mistake made on a thousand lines is one of them. */
export function faultGroups(faults: readonly Fault[]): FaultGroup[] {
  const groups = new Map<string, FaultGroup>();
  for (const { line, column, message, value } of faults) {
    const key = JSON.stringify([column, value, message]);
    const group = groups.get(key) ?? { runs: [], lines: 0, column, message, value };
    groups.set(key, group);
    if (line === null) continue;
    const last = group.runs.at(-1);
    if (last?.[1] === line) continue;
    group.lines++;
    if (last?.[1] === line - 1) last[1] = line;
    else group.runs.push([line, line]);
  }
  return [...groups.values()].map((group) => ({ ...group, runs: group.runs.slice(0, RUNS_KEPT) }));
}

import { dimensionName } from '../dimension';
import { roundKey, setupKey } from './cross';
import type { Draft } from './draft';
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

/** What a file holds, in counts and names; of a faulty file, what its sound lines hold. */
export function summarise(drafts: readonly Draft[], { numbered, ...facts }: FileFacts): FileSummary {
  let from = Infinity;
  let to = -Infinity;
  for (const { takenAt } of drafts) {
    from = Math.min(from, takenAt);
    to = Math.max(to, takenAt);
  }
  return {
    ...facts,
    separator: SEPARATOR_NAMES[facts.separator],
    readings: drafts.length,
    jobs: distinct(drafts, (d) => d.job).length,
    rounds: distinct(drafts, roundKey).length,
    setups: distinct(drafts, setupKey).length,
    technicians: distinct(drafts, (d) => d.technician),
    gauges: distinct(drafts, (d) => d.gauge),
    sheets: distinct(drafts, (d) => d.sheet),
    from: drafts.length === 0 ? null : from,
    to: drafts.length === 0 ? null : to,
    notes: notes(drafts, facts.ignoredColumns, numbered),
  };
}

function distinct(drafts: readonly Draft[], of: (draft: Draft) => string | null): string[] {
  const names = new Set<string>();
  for (const draft of drafts) {
    const name = of(draft);
    if (name !== null) names.add(name);
  }
  return [...names].sort();
}

function notes(drafts: readonly Draft[], ignoredColumns: readonly string[], numbered: boolean): string[] {
  const found: string[] = [];
  if (ignoredColumns.length > 0) {
    found.push(`Columns that were not read: ${ignoredColumns.join(', ')}.`);
  }
  const tape = drafts.filter((d) => d.gaugeKind === 'tape').length;
  if (tape > 0) {
    found.push(
      `${tape} readings were taken with a tape: a tape alone is a quick check, never a final record.`,
    );
  }
  const twins = numbered ? [] : alike(drafts);
  if (twins.length > 0) {
    found.push(
      `Lines that say what an earlier line says, time and value included: ${twins.length} (the first is line ${twins[0]?.line ?? ''}). They count as repeats; remove them if they were pasted twice.`,
    );
  }
  return found;
}

/** Lines of one setup and dimension with the time and value of an earlier one. */
function alike(drafts: readonly Draft[]): Draft[] {
  const met = new Set<string>();
  return drafts.filter((draft) => {
    const key = `${setupKey(draft)}\n${dimensionName(draft)}\n${draft.takenAt} ${draft.value}`;
    return met.has(key) || !met.add(key);
  });
}

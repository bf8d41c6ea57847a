import { DEFAULT_TOLERANCE } from '@/lib/measure/trade';
import type { Draft } from '../draft';
import { Lines } from '../cross';
import type { KnownSheets } from '../known-sheets';
import { checkLengths } from '../rules/lengths';
import { checkKnownSheets, checkSheets } from '../rules/sheets';
import type { ByJob } from './by-job';
import type { LineTable } from './line-table';
import { thing } from './names';

/**
 * What the lines of a sheet leave out of a dimension and what they contradict, seen from one line for each way in
 * which a dimension is stated: whether lines contradict each other does not depend on how many say so.
 */
export class SheetValues {
  /** False where the rules of sheets would refuse a line. */
  sound = true;
  /** By sheet and number as stated: the number of the complete dimension. */
  private readonly complete = new Map<number, number>();
  private readonly width: number;

  constructor(
    private readonly table: LineTable,
    private readonly known: KnownSheets,
    lines: ByJob,
    sheets: Int32Array,
  ) {
    this.width = table.stated.all.length;
    const named = new Map<number, Draft>();
    for (const [job, sheet] of sheets.entries()) {
      // Of a part of a file most jobs have no line.
      if (lines.from[job] === lines.from[job + 1]) continue;
      const own = sheet < 0 ? new Map<number, Draft>() : named;
      for (let k = lines.from[job] ?? 0; k < (lines.from[job + 1] ?? 0); k++) {
        const at = lines.order[k] ?? 0;
        const stated = table.statedAt[at] ?? 0;
        const key = this.keyOf(job, sheet, stated);
        if (!own.has(key)) own.set(key, this.oneSaying(job, sheet, stated, table.line[at] ?? 0));
      }
      if (sheet < 0) this.settle(own);
    }
    this.settle(named);
  }

  /** The number of the dimension with all that its sheet says of it. */
  of(job: number, sheet: number, stated: number): number {
    return this.complete.get(this.keyOf(job, sheet, stated)) ?? stated;
  }

  /** Sheets count from zero up, jobs without one from −1 down. */
  private keyOf(job: number, sheet: number, stated: number): number {
    return (sheet < 0 ? -1 - job : sheet) * this.width + stated;
  }

  private settle(drafts: ReadonlyMap<number, Draft>): void {
    const lines = new Lines([...drafts.values()], new Set(), () => (this.sound = false));
    checkKnownSheets(lines, this.known);
    checkLengths(lines, this.known);
    checkSheets(lines);
    for (const [key, draft] of drafts) {
      const { zero, tolerance } = draft;
      this.complete.set(
        key,
        this.table.statedOf({ ...draft, zero: zero ?? false, tolerance: tolerance ?? DEFAULT_TOLERANCE }),
      );
    }
  }

  private oneSaying(job: number, sheet: number, stated: number, line: number): Draft {
    const { jobs, sheets } = this.table;
    return {
      ...thing(this.table.stated.all, stated),
      ...{ line, job: thing(jobs.all, job), sheet: sheet < 0 ? null : thing(sheets.all, sheet) },
      ...{ stage: 'before', attempt: 1, takenAt: 0, technician: '', gauge: '', gaugeKind: null, setup: '' },
      ...{ clearance: null, repeat: null, value: 0, cause: null },
    };
  }
}

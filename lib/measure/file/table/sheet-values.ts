import { DEFAULT_TOLERANCE } from '@/lib/measure/trade';
import type { Draft } from '../draft';
import { Lines } from '../cross';
import type { KnownSheets } from '../known-sheets';
import { checkLengths } from '../rules/lengths';
import { checkKnownSheets, checkSheets } from '../rules/sheets';
import type { ByJob } from './by-job';
import type { LineTable } from './line-table';
import { thing } from './names';

/** A way in which a dimension is stated, by numbers, with the first line that states it so. */
export interface Saying {
  /** Jobs that name no sheet have −1, and each its own dimensions. */
  sheet: number;
  job: number;
  stated: number;
  line: number;
}

/** Every way in which the lines state a dimension, each once. */
export function sayingsOf(table: LineTable, lines: ByJob, sheets: Int32Array): Saying[] {
  const sayings: Saying[] = [];
  const named = new Set<number>();
  const width = table.stated.all.length;
  for (let job = lines.first; job < lines.end; job++) {
    const sheet = sheets[job - lines.first] ?? -1;
    const met = sheet < 0 ? new Set<number>() : named;
    const base = Math.max(sheet, 0) * width;
    for (let k = lines.begin(job); k < lines.endOf(job); k++) {
      const at = lines.order[k] ?? 0;
      const stated = table.statedAt[at] ?? 0;
      if (met.has(base + stated)) continue;
      met.add(base + stated);
      sayings.push({ sheet, job, stated, line: table.line[at] ?? 0 });
    }
  }
  return sayings;
}

/**
 * What the lines of a sheet leave out of a dimension and what they contradict, seen from one line for each way in
 * which a dimension is stated: whether lines contradict each other does not depend on how many say so.
 */
export class SheetValues {
  /** False where the rules of sheets would refuse a line. */
  sound = true;
  /** By sheet, then by number as stated: the number of the complete dimension. */
  private readonly complete = new Map<number, (number | undefined)[]>();
  /** Those of the sheet that was asked for last: lines that stand together are of one. */
  private lastSheet = Number.NaN;
  private ofLast: readonly (number | undefined)[] = [];
  private readonly width: number;

  constructor(
    private readonly table: LineTable,
    private readonly known: KnownSheets,
    readonly sayings: readonly Saying[],
  ) {
    this.width = table.stated.all.length;
    const named = new Map<number, Draft>();
    let own = new Map<number, Draft>();
    let ownJob = -1;
    for (const saying of sayings) {
      const key = this.keyOf(saying.job, saying.sheet, saying.stated);
      if (saying.sheet >= 0) {
        named.set(key, this.oneSaying(saying));
        continue;
      }
      if (saying.job !== ownJob) {
        this.settle(own);
        own = new Map();
        ownJob = saying.job;
      }
      own.set(key, this.oneSaying(saying));
    }
    this.settle(own);
    this.settle(named);
  }

  /** The number of the dimension with all that its sheet says of it. */
  of(job: number, sheet: number, stated: number): number {
    const of = sheetOf(job, sheet);
    if (of !== this.lastSheet) {
      this.lastSheet = of;
      this.ofLast = this.complete.get(of) ?? [];
    }
    return this.ofLast[stated] ?? stated;
  }

  private keyOf(job: number, sheet: number, stated: number): number {
    return sheetOf(job, sheet) * this.width + stated;
  }

  private settle(drafts: ReadonlyMap<number, Draft>): void {
    if (drafts.size === 0) return;
    const lines = new Lines([...drafts.values()], new Set(), () => (this.sound = false));
    checkKnownSheets(lines, this.known);
    checkLengths(lines, this.known);
    checkSheets(lines);
    for (const [key, draft] of drafts) {
      const { zero, tolerance } = draft;
      const of = Math.floor(key / this.width);
      const all = this.complete.get(of) ?? [];
      all[key - of * this.width] = this.table.statedOf({
        ...draft,
        zero: zero ?? false,
        tolerance: tolerance ?? DEFAULT_TOLERANCE,
      });
      this.complete.set(of, all);
    }
  }

  private oneSaying({ job, sheet, stated, line }: Saying): Draft {
    const { jobs, sheets } = this.table;
    return {
      ...thing(this.table.stated.all, stated),
      line,
      job: thing(jobs.all, job),
      sheet: sheet < 0 ? null : thing(sheets.all, sheet),
      stage: 'before',
      attempt: 1,
      takenAt: 0,
      technician: '',
      gauge: '',
      gaugeKind: null,
      setup: '',
      clearance: null,
      repeat: null,
      value: 0,
      cause: null,
    };
  }
}

/** Sheets count from zero up, jobs without one from −1 down. */
const sheetOf = (job: number, sheet: number) => (sheet < 0 ? -1 - job : sheet);

import { grouped } from '../grouped';
import type { Column } from './columns';
import type { Draft } from './draft';
import type { Fault } from './fault';

/**
 * The lines of a file as the rules across lines see them: lines that already have a fault are left out, so that
 * one mistake is named once.
 */
export class Lines {
  private readonly faulty = new Set<Draft>();

  constructor(
    private readonly drafts: readonly Draft[],
    /** Jobs with a line that could not be read; null where it is not even known which job. */
    private readonly doubtfulJobs: Set<string | null>,
    private readonly fault: (fault: Fault, draft: Draft) => void,
    /** How a line is named in a message about another one. */
    readonly placeOf: (draft: Draft) => string = (draft) => `line ${draft.line}`,
  ) {}

  /** Sound lines by key. */
  by(key: (draft: Draft) => string | null): Map<string, Draft[]> {
    const groups = grouped(this.sound(), key);
    const keyed = new Map<string, Draft[]>();
    for (const [name, group] of groups) if (name !== null) keyed.set(name, group);
    return keyed;
  }

  *sound(): Generator<Draft> {
    for (const draft of this.drafts) if (!this.faulty.has(draft)) yield draft;
  }

  isSound(draft: Draft): boolean {
    return !this.faulty.has(draft);
  }

  /** False where a faulty line may be what is missing from the job. */
  isAllRead(job: string): boolean {
    return !this.doubtfulJobs.has(null) && !this.doubtfulJobs.has(job);
  }

  refuse(draft: Draft, column: Column, message: string, value: string | number | null): void {
    if (this.faulty.has(draft)) return;
    this.faulty.add(draft);
    this.doubtfulJobs.add(draft.job);
    this.fault({ line: draft.line, column, message, value: value === null ? null : String(value) }, draft);
  }
}

export const roundKey = (draft: Draft) => `${draft.job}\n${draft.stage}\n${draft.attempt}`;
export const setupKey = (draft: Draft) => `${draft.job}\n${draft.setup}`;
export const roundName = (draft: Draft) => `the ${draft.stage} round ${draft.attempt} of job ${draft.job}`;
export const setupName = (draft: Draft) => `setup ${draft.setup} of job ${draft.job}`;
/** A dimension belongs to its sheet; without one, to its job. */
export const sheetScope = (draft: Draft) =>
  draft.sheet === null ? `job\n${draft.job}` : `sheet\n${draft.sheet}`;
export const sheetName = (draft: Draft) =>
  draft.sheet === null ? `job ${draft.job}` : `sheet ${draft.sheet}`;

import type { Cause, Section, Side } from '@/lib/measure';

/** What one section of one job came to in `after` attempt 1. */
export interface SectionOutcome {
  controlled: number;
  out: number;
}

/** The rollup of a job that lists and rates read, so that they never touch readings. */
export interface JobOutcome {
  job: string;
  /** Null: no `after` attempt 1 with a controlled dimension. */
  right: boolean | null;
  /** To whom the first `after` round counts. */
  technician: string | null;
  /** First reading of that round. */
  at: number | null;
  controlled: number;
  out: number;
  /** Sections without a controlled dimension are absent. */
  sections: Partial<Record<Section, SectionOutcome>>;
}

export type OutcomeGrouping = 'shop' | 'month' | 'technician' | 'sheet' | 'section';

export interface OutcomeCount {
  /** `2025-03` in the shop's time zone, a technician's code, a sheet's name, a section; '' for the whole shop. */
  key: string;
  /** Jobs with an answer. */
  jobs: number;
  right: number;
}

/** What a re-check showed of one side of one setup. Kept for good; the last one counts. */
export interface RecheckOutcome {
  job: string;
  setup: string;
  side: Side | null;
  cause: Cause;
  /** Person's code; null where a file said it. */
  by: string | null;
  at: number;
  note: string | null;
}

import type { Cause, Dimension, Section, Stage } from '@/lib/measure';

export const OUTCOMES = ['right', 'wrong', 'unknown'] as const;
/** Right first time: every controlled dimension of `after` attempt 1 within tolerance. */
export type OutcomeName = (typeof OUTCOMES)[number];

export const JOB_SORTS = ['job', 'sheet', 'stage', 'technician', 'opened', 'outcome'] as const;
export type JobSort = (typeof JOB_SORTS)[number];

/** Which jobs. Everything given must hold. */
export interface JobFilter {
  /** Part of the job number or of the sheet's name, upper or lower case alike. */
  search?: string | undefined;
  /** The last stage reached. */
  stage?: Stage | undefined;
  /** Code of a technician with a setup in the job. */
  technician?: string | undefined;
  sheet?: string | undefined;
  /** A section with a dimension out of tolerance in `after` attempt 1. */
  section?: Section | undefined;
  outcome?: OutcomeName | undefined;
  /** First reading of the job, from (inclusive) and to (exclusive). */
  from?: number | undefined;
  to?: number | undefined;
  /** These job numbers only. */
  jobs?: readonly string[] | undefined;
}

export interface JobQuery extends JobFilter {
  sort?: JobSort | undefined;
  direction?: 'asc' | 'desc' | undefined;
  /** From 1. */
  page?: number | undefined;
  /** At most 200; 50 where absent. */
  pageSize?: number | undefined;
}

export interface JobRow {
  job: string;
  sheet: string | null;
  /** Last round reached. */
  stage: Stage;
  attempt: number;
  openedAt: number;
  lastReadAt: number;
  /** Codes, in order of their first setup. */
  technicians: string[];
  rounds: number;
  setups: number;
  /** Entered, the excluded ones among them. */
  readings: number;
  excluded: number;
  outcome: OutcomeName;
  /** Dimensions out of tolerance in `after` attempt 1, or null where there is none. */
  out: number | null;
  sectionsOut: Section[];
}

export interface Page<Row> {
  rows: readonly Row[];
  total: number;
}

export interface SetupObservation extends Dimension {
  /** Readings that count. */
  n: number;
  /** Readings that were excluded. */
  excluded: number;
  deviation: number;
  ss: number;
  cause: Cause | null;
}

export interface SetupRow {
  job: string;
  stage: Stage;
  attempt: number;
  setup: string;
  technician: string;
  gauge: string;
  hungAt: number;
  /** Readings of the setup that were excluded. */
  excluded: number;
  /** Those with a reading that counts. */
  observations: SetupObservation[];
}

/** Which setups. Everything given must hold. */
export interface SetupFilter {
  technician?: string | undefined;
  gauge?: string | undefined;
  job?: string | undefined;
  /** The sheet of the job. */
  sheet?: string | undefined;
  /** Some dimension of it lies there. */
  section?: Section | undefined;
  /** Hung from (inclusive) and to (exclusive). */
  from?: number | undefined;
  to?: number | undefined;
}

export interface SetupQuery extends SetupFilter {
  page?: number | undefined;
  pageSize?: number | undefined;
}

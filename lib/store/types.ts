import type { Cause, Dimension, GaugeKind, Quantity, Section, Side, Stage } from '@/lib/measure';

/** What the store hands out and takes in: plain types, lengths in mm, times in epoch milliseconds (UTC). */

/** Anything that survives JSON. */
export type Json = string | number | boolean | null | Json[] | { [key: string]: Json };

export type ShopId = number;

export interface Shop {
  id: ShopId;
  name: string;
  /** IANA name; readings without an offset are in this zone, and months are counted in it. */
  timeZone: string;
  /** Where a sheet states none, mm. */
  defaultTolerance: number;
  /** Grows by one with every change of the measurements; a fit names the version it was made from. */
  inputsVersion: number;
}

export const ROLES = ['technician', 'trainer', 'manager'] as const;
export type Role = (typeof ROLES)[number];

export interface Person {
  /** Unique within the shop; the `technician` of a measurement file. */
  code: string;
  name: string;
  role: Role;
  active: boolean;
}

export const GAUGE_STATES = ['in-service', 'out-of-service', 'retired'] as const;
export type GaugeState = (typeof GAUGE_STATES)[number];

export interface Gauge {
  /** Asset tag, unique within the shop. */
  tag: string;
  kind: GaugeKind | null;
  /** Length from the pointer's tip to the fixed mark, mm. */
  fixedMark: number | null;
  state: GaugeState;
  verifiedAt: number | null;
}

export interface GaugeVerification {
  gauge: string;
  at: number;
  /** Error found, mm; null where only the state was judged. */
  error: number | null;
  passed: boolean;
  /** Person's code. */
  by: string | null;
  note: string | null;
}

/** One point of a sheet, apart from its controlled dimensions. `side` null: on the centerline. */
export interface SheetPoint {
  letter: string;
  side: Side | null;
  description: string | null;
  section: Section | null;
  station: number | null;
  zero: boolean;
  /** Distance from the centerline, mm. */
  halfWidth: number | null;
}

export interface Sheet {
  name: string;
  dimensions: Dimension[];
  points: SheetPoint[];
}

export interface SheetRow {
  name: string;
  dimensions: number;
  jobs: number;
}

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
  readings: number;
  outcome: OutcomeName;
  /** Dimensions out of tolerance in `after` attempt 1, or null where there is none. */
  out: number | null;
  sectionsOut: Section[];
}

export interface Page<Row> {
  rows: Row[];
  total: number;
}

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

export interface ReadingFilter extends JobFilter {
  gauge?: string | undefined;
  /** One round or one setup of a job. */
  attempt?: number | undefined;
  setup?: string | undefined;
  quantity?: Quantity | undefined;
}

/** The file that readings come from. `sha256` in hex, of the bytes as given. */
export interface SourceFile {
  name: string;
  sha256: string;
  lines: number;
}

export interface LoadedFile extends SourceFile {
  loadedAt: number;
  added: number;
  alreadyThere: number;
}

export interface SaveSummary {
  added: number;
  alreadyThere: number;
  /** Re-check causes that the file newly states. */
  causes: number;
  /** Numbers of the jobs that gained something, in order. */
  jobs: string[];
  newJobs: number;
  newSetups: number;
  newSheets: number;
  newPeople: string[];
  newGauges: string[];
}

/** One line that cannot be stored, and why. */
export interface Conflict {
  line: number;
  column: string;
  reason: string;
}

export interface SetupRow {
  job: string;
  stage: Stage;
  attempt: number;
  setup: string;
  technician: string;
  gauge: string;
  hungAt: number;
  observations: (Dimension & { n: number; deviation: number; ss: number; cause: Cause | null })[];
}

export interface SetupQuery {
  technician?: string | undefined;
  gauge?: string | undefined;
  job?: string | undefined;
  from?: number | undefined;
  to?: number | undefined;
  page?: number | undefined;
  pageSize?: number | undefined;
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

/** What the shop has learned, with the version of the inputs it was learned from. */
export interface Fit {
  id: number;
  inputsVersion: number;
  fittedAt: number;
  parameters: Json;
  /** Figures of technicians, gauges and the shop, ready for the pages. */
  figures: Json;
}

/** One height's verdict, as far as lists ask for it. Probabilities sum to one. */
export interface HeightRecord {
  setup: string;
  point: string;
  side: Side;
  zero: boolean;
  deviation: number;
  p: Record<Cause, number>;
  misset: number;
  body: number;
  signature: string | null;
}

export interface VerdictRecord {
  job: string;
  stage: Stage;
  attempt: number;
  decidable: boolean;
  why: string | null;
  pZeroMisset: number;
  heights: HeightRecord[];
  /** The whole verdict as assessed. */
  document: Json;
}

export interface StoredVerdict extends Omit<VerdictRecord, 'heights'> {
  fit: number;
  /** First reading of the round. */
  at: number;
}

export interface StoredHeight extends HeightRecord {
  job: string;
  stage: Stage;
  attempt: number;
  technician: string;
  gauge: string;
  hungAt: number;
  /** What a re-check proved, or null. */
  cause: Cause | null;
}

export interface VerdictFilter {
  job?: string | undefined;
  technician?: string | undefined;
  gauge?: string | undefined;
  from?: number | undefined;
  to?: number | undefined;
  /** Only the last round of each job. */
  last?: boolean | undefined;
  decidable?: boolean | undefined;
  /** Some height whose P(gauge) + P(both) is at least this. */
  minGauge?: number | undefined;
  limit?: number | undefined;
}

import type { Cause, Dimension, Job, Reading, Side } from '@/lib/measure';
import type {
  Conflict,
  Fit,
  Gauge,
  GaugeVerification,
  JobFilter,
  JobOutcome,
  JobQuery,
  JobRow,
  Json,
  LoadedFile,
  OutcomeCount,
  OutcomeGrouping,
  Page,
  Person,
  ReadingFilter,
  RecheckOutcome,
  SaveSummary,
  SetupQuery,
  SetupRow,
  Sheet,
  SheetRow,
  Shop,
  ShopId,
  SourceFile,
  StoredHeight,
  StoredVerdict,
  VerdictFilter,
  VerdictRecord,
} from './types';

export type * from './types';
export { GAUGE_STATES, JOB_SORTS, OUTCOMES, ROLES } from './types';

/** The one door to the database. The bodies follow; the signatures hold. */

/** The shop of this installation; made with defaults where the database has none. */
export declare function getShop(): Promise<Shop>;
export declare function saveShop(
  shop: ShopId,
  change: Partial<Pick<Shop, 'name' | 'timeZone' | 'defaultTolerance'>>,
): Promise<Shop>;
/** Version of everything that a fit is learned from. */
export declare function inputsVersion(shop: ShopId): Promise<number>;

export declare function listPeople(shop: ShopId): Promise<Person[]>;
export declare function getPerson(shop: ShopId, code: string): Promise<Person | null>;
export declare function savePeople(shop: ShopId, people: readonly Person[]): Promise<void>;

export declare function listGauges(shop: ShopId): Promise<Gauge[]>;
export declare function getGauge(
  shop: ShopId,
  tag: string,
): Promise<(Gauge & { verifications: GaugeVerification[] }) | null>;
export declare function saveGauges(shop: ShopId, gauges: readonly Gauge[]): Promise<void>;
export declare function recordVerification(shop: ShopId, verification: GaugeVerification): Promise<void>;

export declare function listSheets(shop: ShopId): Promise<SheetRow[]>;
export declare function getSheet(shop: ShopId, name: string): Promise<Sheet | null>;
export declare function saveSheet(shop: ShopId, sheet: Sheet): Promise<void>;
/** Sheet name → its dimensions: what a measurement file may leave out. */
export declare function sheetBook(shop: ShopId): Promise<Map<string, Dimension[]>>;

export declare function countJobs(shop: ShopId, filter?: JobFilter): Promise<number>;
export declare function listJobs(shop: ShopId, query: JobQuery): Promise<Page<JobRow>>;
/** A job with its collapsed observations; null where there is none of this number. */
export declare function getJob(shop: ShopId, job: string): Promise<Job | null>;
export declare function getJobRow(shop: ShopId, job: string): Promise<JobRow | null>;
/** Jobs from collapsed observations only, by number. */
export declare function loadJobs(shop: ShopId, filter?: JobFilter): Promise<Job[]>;
export declare function listSetups(shop: ShopId, query: SetupQuery): Promise<Page<SetupRow>>;

/** All or nothing. A reading already stored is skipped; one that contradicts what is stored throws StoreConflict. */
export declare function saveReadings(
  shop: ShopId,
  readings: readonly Reading[],
  file: SourceFile,
): Promise<SaveSummary>;
export declare class StoreConflict extends Error {
  readonly conflicts: readonly Conflict[];
}
export declare function listLoadedFiles(shop: ShopId): Promise<LoadedFile[]>;
/** Readings in the order job, time, line; `line` is that of the file they came with. */
export declare function readingsFor(
  shop: ShopId,
  filter?: ReadingFilter,
): AsyncGenerator<Reading, void, undefined>;
export declare function readingsOfSetup(shop: ShopId, job: string, setup: string): Promise<Reading[]>;

/** What a re-check showed. The last one counts. */
export declare function recordOutcome(
  shop: ShopId,
  outcome: {
    job: string;
    setup: string;
    side: Side | null;
    cause: Cause;
    by: string | null;
    note: string | null;
    at?: number;
  },
): Promise<void>;
export declare function listRecheckOutcomes(
  shop: ShopId,
  filter?: { job?: string },
): Promise<RecheckOutcome[]>;

export declare function saveJobOutcomes(shop: ShopId, outcomes: readonly JobOutcome[]): Promise<void>;
/** Numbers of jobs whose rollup is absent or older than their readings. */
export declare function jobsWithoutOutcome(shop: ShopId): Promise<string[]>;
/** Right-first-time counts, grouped in the database. */
export declare function countOutcomes(
  shop: ShopId,
  by: OutcomeGrouping,
  filter?: JobFilter,
): Promise<OutcomeCount[]>;

export declare function saveFit(
  shop: ShopId,
  fit: { inputsVersion: number; parameters: Json; figures: Json },
): Promise<Fit>;
/** The newest fit, or null before the first. It may be older than the readings: compare `inputsVersion`. */
export declare function currentFit(shop: ShopId): Promise<Fit | null>;
export declare function saveRoundVerdicts(
  shop: ShopId,
  fit: number,
  verdicts: readonly VerdictRecord[],
): Promise<void>;
/** Numbers of jobs with a round whose verdict is absent or older than its readings. */
export declare function jobsWithoutVerdict(shop: ShopId): Promise<string[]>;
/** Newest round first. */
export declare function verdictsFor(shop: ShopId, filter: VerdictFilter): Promise<StoredVerdict[]>;
/** Heights with their verdict, newest first. */
export declare function heightsFor(shop: ShopId, filter: VerdictFilter): Promise<StoredHeight[]>;

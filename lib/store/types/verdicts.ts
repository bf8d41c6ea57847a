import type { Cause, Side, Stage } from '@/lib/measure';
import type { Json } from './json';

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
  jobs?: readonly string[] | undefined;
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

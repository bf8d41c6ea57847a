import type { Cause, Dimension, GaugeKind, Reading, Stage } from '@/lib/measure';
import type {
  KnownDimension,
  KnownJob,
  KnownObservation,
  KnownReading,
  KnownRound,
  KnownSetup,
  KnownSheet,
} from './known';

/** A batch of readings laid out as the store keeps them, each thing beside what is known of it already. */
export interface Batch {
  people: Set<string>;
  gauges: Map<string, BatchGauge>;
  sheets: BatchSheet[];
  jobs: Map<string, BatchJob>;
  alreadyThere: number;
}

export interface BatchGauge {
  tag: string;
  kind: GaugeKind | null;
  known: { id: number; kind: GaugeKind | null } | null;
}

export interface BatchSheet {
  name: string | null;
  known: KnownSheet | null;
  /** By `dimensionKey`. */
  dimensions: Map<string, BatchDimension>;
}

export interface BatchDimension {
  /** As first stated, by the store or by the batch. */
  stated: Dimension;
  known: KnownDimension | null;
}

export interface BatchJob {
  number: string;
  known: KnownJob | null;
  sheet: BatchSheet;
  rounds: Map<string, BatchRound>;
  setups: Map<string, BatchSetup>;
}

export interface BatchRound {
  stage: Stage;
  attempt: number;
  clearance: number | null;
  known: KnownRound | null;
}

export interface BatchSetup {
  label: string;
  known: KnownSetup | null;
  round: BatchRound;
  technician: string;
  gauge: string;
  /** By `dimensionKey`. */
  observations: Map<string, BatchObservation>;
}

export interface BatchObservation {
  dimension: BatchDimension;
  known: KnownObservation | null;
  /** Stored and new ones together, by repeat. */
  readings: Map<number, KnownReading>;
  /** To be stored. */
  added: Reading[];
  cause: Cause | null;
  /** True where the batch states a cause that was never recorded. */
  newCause: boolean;
}

/** True where storing the batch would change this observation. */
export const gains = (observation: BatchObservation): boolean =>
  observation.added.length > 0 || observation.newCause;

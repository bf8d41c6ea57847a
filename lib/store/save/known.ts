import type { Cause, Dimension, GaugeKind, Stage } from '@/lib/measure';

/** What the store holds of the things that a batch of readings names, by the batch's own names. */
export interface Known {
  /** Code → id. */
  people: Map<string, number>;
  gauges: Map<string, { id: number; kind: GaugeKind | null }>;
  /** Named sheets. */
  sheets: Map<string, KnownSheet>;
  /** By job number. */
  jobs: Map<string, KnownJob>;
  /** By `observationKey`; only those of setups that the batch names. */
  observations: Map<string, KnownObservation>;
}

export interface KnownDimension extends Dimension {
  id: number;
}

export interface KnownSheet {
  id: number;
  /** Null where the sheet is one job's own. */
  name: string | null;
  /** By `dimensionKey`. */
  dimensions: Map<string, KnownDimension>;
}

export interface KnownRound {
  id: number;
  stage: Stage;
  attempt: number;
  clearance: number | null;
  startedAt: number;
}

export interface KnownSetup {
  id: number;
  round: KnownRound;
  technician: string;
  gauge: string;
  hungAt: number;
}

export interface KnownJob {
  id: number;
  sheet: KnownSheet;
  openedAt: number;
  lastReadAt: number;
  readings: number;
  version: number;
  /** By `roundKey`. */
  rounds: Map<string, KnownRound>;
  /** By label. */
  setups: Map<string, KnownSetup>;
}

export interface KnownReading {
  /** As first entered: what a file said, it says again. */
  value: number;
  takenAt: number;
  /** The value that counts, or null where the reading is excluded. */
  counts: number | null;
}

export interface KnownObservation {
  cause: Cause | null;
  /** Every cause that was ever recorded for this side of the setup. */
  causes: Set<Cause>;
  /** By repeat. */
  readings: Map<number, KnownReading>;
}

export const roundKey = (stage: Stage, attempt: number): string => `${stage} ${attempt}`;
export const observationKey = (setupId: number, dimensionId: number): string => `${setupId} ${dimensionId}`;

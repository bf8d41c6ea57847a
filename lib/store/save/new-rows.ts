import type { Dimension, Stage } from '@/lib/measure';

/**
 * What is to be stored of some jobs of which nothing is stored yet, laid out by numbers: those of technicians, gauges,
 * labels and dimensions are the file's, those of jobs, rounds and setups count within this piece. Columns of numbers can
 * be handed from thread to thread without being copied.
 */
export interface NewRows {
  named: NewNames;
  jobs: NewJobRow[];
  rounds: NewRoundRow[];
  /** Dimensions of jobs that name no sheet, job by job. */
  own: { job: number; dimensions: Dimension[] }[];
  setups: {
    count: number;
    job: Int32Array;
    round: Int32Array;
    label: Int32Array;
    technician: Int32Array;
    gauge: Int32Array;
    hungAt: Float64Array;
  };
  observations: {
    count: number;
    setup: Int32Array;
    /** Where the job names no sheet, −1 less its place among all of `own`. */
    dimension: Int32Array;
    n: Int32Array;
    mean: Float64Array;
    deviation: Float64Array;
    ss: Float64Array;
    takenAt: Float64Array;
    /** Place in `CAUSES`; −1 for none. */
    cause: Int8Array;
  };
  readings: {
    count: number;
    observation: Int32Array;
    repeat: Int32Array;
    value: Float64Array;
    takenAt: Float64Array;
    line: Int32Array;
  };
  /** What the file says that was proved, by place in `CAUSES`. */
  proved: { setup: number; side: 'L' | 'R' | ''; cause: number; at: number }[];
}

/** What no earlier piece named, in the order of the numbers that it has in the file. */
export interface NewNames {
  technicians: string[];
  gauges: string[];
  labels: string[];
  /** By the name of their sheet and `dimensionKey`. */
  dimensions: { sheet: string; key: string }[];
}

export interface NewJobRow {
  number: string;
  sheet: string | null;
  openedAt: number;
  lastReadAt: number;
  lastStage: Stage;
  lastAttempt: number;
  technician: number;
  rounds: number;
  setups: number;
  readings: number;
  /** Who has a setup in it, and since when. */
  hands: [technician: number, at: number][];
}

export interface NewRoundRow {
  job: number;
  stage: Stage;
  attempt: number;
  clearance: number | null;
  technician: number;
  startedAt: number;
}

export const CAUSES = ['neither', 'gauge', 'body', 'both'] as const;

/** The columns of numbers, to be handed to another thread. */
export const buffersOf = ({ setups, observations, readings }: NewRows): ArrayBuffer[] =>
  [setups, observations, readings].flatMap((columns) =>
    Object.values(columns).flatMap((column) =>
      typeof column !== 'number' && column.buffer instanceof ArrayBuffer ? [column.buffer] : [],
    ),
  );

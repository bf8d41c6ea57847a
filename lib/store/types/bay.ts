import type { Stage } from '@/lib/measure';

/** Which round is measured beside the car, and against what. */
export interface NewBayRound {
  job: string;
  sheet: string;
  stage: Stage;
  /** From 1. */
  attempt: number;
  /** Added to every height, mm. */
  clearance: number;
}

export interface BayRoundRow extends Omit<NewBayRound, 'clearance'> {
  id: number;
  /** Code of who began it. */
  by: string;
  startedAt: number;
  finishedAt: number | null;
  lastEntryAt: number | null;
  /** Readings entered and taken. */
  readings: number;
  /** Begun by whoever asks, or with entries of theirs. */
  mine: boolean;
}

/** How somebody stands to a round. */
export interface BayStanding {
  finishedAt: number | null;
  /** Began it, or had an entry in it before it was finished. */
  tookPart: boolean;
}

/** Who enters, as what may be entered depends on it. */
export interface BayEnterer {
  /** Person's code. */
  by: string;
  /** True where another's hand may be named. */
  forOthers: boolean;
}

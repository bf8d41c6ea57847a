/** What a trial is run to find out, with the size that matters: mm for a bias, a ratio of scatters otherwise. */
export type TrialPurpose =
  | { question: 'bias'; difference: number }
  | { question: 'repeatability' | 'setting' | 'training'; ratio: number };

export interface TrialPoint {
  name: string;
  /** Value of the sheet, mm; nobody who enters readings sees it. */
  value: number;
  /** Half width of the tolerance, mm. */
  tolerance: number;
}

/** All that a trial's run sheet follows from; the same plan gives the same sheet. */
export interface TrialPlan {
  asked: TrialPurpose;
  points: TrialPoint[];
  /** Codes. */
  people: string[];
  /** Hangings of each person at each point. */
  setups: number;
  /** Readings of a hanging. */
  readings: number;
  seed: number;
  /** Scatter that the numbers were planned with, mm. */
  expected: { reading: number; setting: number };
}

export interface TrialRow {
  id: number;
  name: string;
  plan: TrialPlan;
  createdAt: number;
  /** Null while readings are entered. */
  closedAt: number | null;
  /** Readings entered, of `plannedReadings(plan)`. */
  entered: number;
}

/** A place in the plan: `run` is a line of the run sheet from 1, `repeat` a reading of that hanging from 1. */
export interface TrialPlace {
  run: number;
  repeat: number;
}

export interface EnteredReading extends TrialPlace {
  /** As read, mm. */
  value: number;
  /** Who read, by the code of today. */
  by: string;
  at: number;
}

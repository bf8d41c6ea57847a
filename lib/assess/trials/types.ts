/** One reading of a trial as it was entered. */
export interface TrialReading {
  person: string;
  point: string;
  /** Which hanging of this person at this point: `1`, `2`, … */
  setup: string;
  /** As read, or its deviation from the sheet, mm: the same for all readings of a trial. */
  value: number;
}

/** What a trial is run to find out. */
export type TrialQuestion =
  /** A bias between two technicians of `difference` mm. */
  | { question: 'bias'; difference: number }
  /** The sd of reading again, or of setting, of one technician: its upper limit below `ratio` times the true sd. */
  | { question: 'repeatability' | 'setting'; ratio: number }
  /** A training that leaves `ratio` (below 1) of one technician's scatter of hanging and reading. */
  | { question: 'training'; ratio: number };

export interface TrialSize {
  points: number;
  people: number;
  /** Hangings of each person at each point. */
  setups: number;
  /** Readings of a hanging. */
  readings: number;
}

/** Scatter to be expected, mm: the shop's own figures. */
export interface ExpectedScatter {
  reading: number;
  setting: number;
}

export interface Estimated {
  value: number | null;
  low: number | null;
  high: number | null;
  why: string | null;
}

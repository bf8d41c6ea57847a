import type { Cause, Quantity, Section, Side, Stage } from '@/lib/measure';
import type { RoundPatterns } from './patterns/types';

/** An estimate with its 95 % interval; a field is null where it cannot be had, and `why` says so. */
export interface Interval {
  low: number | null;
  high: number | null;
}

export interface SdEstimate extends Interval {
  sd: number | null;
  df: number | null;
  why: string | null;
}

export interface MeanEstimate extends Interval {
  mean: number | null;
  why: string | null;
}

/** A proportion of jobs, with its Wilson interval. */
export interface Rate extends Interval {
  jobs: number;
  right: number;
  rate: number | null;
  why: string | null;
}

export interface TechnicianRate extends Rate {
  /** Jobs that would be right at the shop's rate, given how hard these jobs were. */
  expected: number | null;
  /** The rate drawn towards the shop's (beta-binomial). */
  shrunk: number | null;
}

export interface Habit {
  /** Its key, `low-hanger`; names and texts are in `habits/texts`. */
  habit: string;
  /** −log₁₀ of the p adjusted over all people and habits: 1.3 or more. */
  strength: number;
  /** A sentence with the numbers. */
  evidence: string;
  /** The newest setups that show it, `job/setup`. */
  setups: string[];
}

export interface TechnicianFigures {
  technician: string;
  readings: number;
  setups: number;
  jobs: number;
  /** Reading again, gauge untouched. */
  repeatability: SdEstimate;
  /** Ordinary scatter of one side's setting, mis-sets set aside. */
  setting: SdEstimate;
  /** Systematic part, against the mean of all technicians. */
  bias: MeanEstimate;
  firstTimeRight: TechnicianRate;
  habits: Habit[];
}

export interface GaugeFigures {
  gauge: string;
  readings: number;
  bias: MeanEstimate;
}

/** The verdict on one height of one setup. Probabilities sum to one. */
export interface HeightVerdict {
  setup: string;
  gauge: string;
  technician: string;
  point: string;
  side: Side;
  station: number;
  zero: boolean;
  deviation: number;
  p: Record<Cause, number>;
  /** Expected gauge part and body part in mm, given all readings of the round. */
  misset: number;
  body: number;
  /** The recognisable setting slip whose size fits, named, or null. */
  signature: string | null;
}

export interface DatumLine {
  side: Side;
  /** Stations of the two zero gauges, mm, and how far each end of the datum is off, mm. */
  front: { station: number; error: number };
  rear: { station: number; error: number };
}

/** The verdict on one centre pin. Probabilities sum to one. */
export interface CenterlineVerdict {
  setup: string;
  gauge: string;
  technician: string;
  point: string;
  station: number;
  zero: boolean;
  deviation: number;
  p: Record<Cause, number>;
  misset: number;
  body: number;
}

export type CheckAction = 'rehang' | 'read-length' | 'exchange' | 'other-technician';

export interface NextCheck {
  action: CheckAction;
  /** The setup to hang again (or the first of two to exchange). */
  setup: string | null;
  /** The second setup of an exchange. */
  other: string | null;
  /** The length to read. */
  point: string | null;
  gainBits: number;
  minutes: number;
  /** What to do, in words a technician acts on. */
  words: string;
}

export interface RoundVerdict {
  job: string;
  stage: Stage;
  attempt: number;
  /** False where the center section does not carry the datum. */
  decidable: boolean;
  why: string | null;
  pZeroMisset: number;
  /** Expected error of the datum at the zero stations, mm, by side: the line that every height is read from. */
  datum: DatumLine[];
  heights: HeightVerdict[];
  /** The same question for the centre pins: sway or a gauge hung off centre. */
  centerline: CenterlineVerdict[];
  /**
   * Bound, under the model, on the probability that the kind of the true explanation (what is damaged, what is set
   * wrong) was left out of the search, but for what it looked ahead to: there the share is an estimate.
   */
  leftOut: number;
  /** Best first. */
  nextChecks: NextCheck[];
  /** Sag, twist, sway, mash and diamond, as far as the readings bear them out; absent in verdicts of an earlier program. */
  patterns?: RoundPatterns;
}

/** A dimension of a round as it counts for the record: the last setup, by the mean of its readings. */
export interface RecordedDimension {
  quantity: Quantity;
  point: string;
  side: Side | null;
  section: Section | null;
  station: number | null;
  zero: boolean;
  nominal: number;
  tolerance: number;
  setup: string;
  technician: string;
  gauge: string;
  n: number;
  deviation: number;
  within: boolean;
  /** How often this dimension was set up in the round. */
  setups: number;
}

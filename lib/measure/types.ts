/** The domain in plain types. All lengths are millimetres; all times are epoch milliseconds (UTC). */

export const STAGES = ['before', 'after'] as const;
export const QUANTITIES = ['length', 'height', 'centerline'] as const;
export const SIDES = ['L', 'R'] as const;
export const SECTIONS = ['front', 'center', 'rear'] as const;
export const GAUGE_KINDS = ['tram', 'digital-tram', 'tracking', 'centering', 'strut', 'tape'] as const;
export const CAUSES = ['neither', 'gauge', 'body', 'both'] as const;

export type Stage = (typeof STAGES)[number];
export type Quantity = (typeof QUANTITIES)[number];
export type Side = (typeof SIDES)[number];
export type Section = (typeof SECTIONS)[number];
export type GaugeKind = (typeof GAUGE_KINDS)[number];
/** The four classes of a height: which part of its deviation is larger than the tolerance. */
export type Cause = (typeof CAUSES)[number];

/** What a dimension is, apart from any reading of it. Known by quantity, point and side. */
export interface Dimension {
  quantity: Quantity;
  /** The sheet's letter (`K`); for a length both ends (`K-N`, or `K.L-N.R` where both sides share letters). */
  point: string;
  /** Heights only. */
  side: Side | null;
  section: Section | null;
  /** Along the vehicle, front to rear, any origin. Heights and centerline only. */
  station: number | null;
  /** True where the point is one of the two zero stations, which carry the datum plane. */
  zero: boolean;
  nominal: number;
  /** Half width of the tolerance; the edge is within. */
  tolerance: number;
}

/** One line of a measurement file, validated. `value` is as read, clearance included. */
export interface Reading extends Dimension {
  /** 1-based line in its file (the header is line 1). */
  line: number;
  job: string;
  sheet: string | null;
  stage: Stage;
  attempt: number;
  takenAt: number;
  technician: string;
  gauge: string;
  gaugeKind: GaugeKind | null;
  setup: string;
  clearance: number;
  repeat: number;
  value: number;
  cause: Cause | null;
}

/**
 * The readings of one dimension in one setup, collapsed. Two collapsed forms merge exactly, so nothing
 * downstream ever needs the readings themselves.
 */
export interface Observation extends Dimension {
  /** Number of readings, at least 1. */
  n: number;
  /** Mean deviation from the sheet: value − (nominal + clearance), clearance for heights only. */
  deviation: number;
  /** Sum of squared differences of the readings from their mean, mm². */
  ss: number;
  /** What a re-check proved of this height, or null. */
  cause: Cause | null;
  /** Time of the first reading. */
  takenAt: number;
}

/** One setting and hanging of one gauge by one technician. */
export interface Setup {
  label: string;
  technician: string;
  gauge: string;
  gaugeKind: GaugeKind | null;
  /** Time of the first reading in this setup. */
  takenAt: number;
  /** In the order they were first read. */
  observations: Observation[];
}

/** One measuring of one job: stage and attempt. Setups in the order they were hung. */
export interface Round {
  job: string;
  sheet: string | null;
  stage: Stage;
  attempt: number;
  /** Added to every height of this round so that the bars clear the vehicle. */
  clearance: number;
  setups: Setup[];
}

/** Rounds in the order before 1, before 2, …, after 1, after 2, …. */
export interface Job {
  job: string;
  sheet: string | null;
  rounds: Round[];
}

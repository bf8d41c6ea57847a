/** Whose series it is; the shop's own has no name. */
export interface Subject {
  kind: 'shop' | 'technician' | 'gauge' | 'sheet';
  name: string | null;
}

/** Jobs of one period (a month or a week), additive. Periods come in their order; one without jobs may be given or not. */
export interface RateSeries {
  what: 'right-first-time';
  subject: Subject;
  periods: { period: string; right: number; jobs: number }[];
}

/** Setting errors of one period, collapsed, mm: what the verdicts say the gauges of its setups were off by. */
export interface SettingSeries {
  what: 'setting-bias' | 'setting-scatter';
  subject: Subject;
  periods: { period: string; n: number; mean: number; ss: number }[];
}

export type Series = RateSeries | SettingSeries;

export interface ChartPoint {
  period: string;
  /** How far this period lies from all before it, as a standard normal score; null while there is too little before it. */
  score: number | null;
  /** EWMA and both CUSUM sums after it, in sds; null as the score. */
  ewma: number | null;
  upper: number | null;
  lower: number | null;
  /** Beyond a limit of either chart. */
  alarm: 'up' | 'down' | null;
}

export interface SignalChart {
  series: Series;
  points: ChartPoint[];
  /** Limits of |EWMA| and of the CUSUM sums, in sds. */
  ewmaLimit: number;
  cusumLimit: number;
  why: string | null;
}

export interface Design {
  /** Periods between false alarms of the whole list, on average, and the charts that share them. */
  falseAlarmPeriods: number;
  charts: number;
  /** Periods between false alarms of one chart. */
  runLength: number;
  /** What that is in jobs of the shop, where it is known. */
  falseAlarmJobs: number | null;
  lambda: number;
  k: number;
  method: string;
}

export interface Signal {
  what: Series['what'];
  subject: Subject;
  direction: 'worse' | 'better';
  /** The period in which it was noticed, and where the change began, with the periods that hold it with 95 %. */
  noticed: string;
  began: { period: string; low: string; high: string } | null;
  /** Change from before to after, with its 95 % interval: points of the rate, mm, or a ratio of sds. */
  size: { unit: 'rate' | 'mm' | 'ratio'; value: number; low: number; high: number } | null;
  /** Of a change so clear somewhere in this series by chance, adjusted over all series (Benjamini–Hochberg). */
  p: number | null;
  evidence: string;
  next: string;
}

/** One hand in its ordinary work. */
export interface WorkingHand {
  technician: string;
  /** Share of the shop's jobs; shares need not add up to one. */
  share: number;
  /** Sds of reading again and of one hanger's setting, mm; standard errors of their logarithms. */
  reading: number;
  setting: number;
  settingLogSe: number;
  /** Systematic part of a height, mm. */
  bias: number;
  missetRate: number;
  missetRateSe: number;
}

export interface WorkingGauge {
  gauge: string;
  /** Share of the readings. */
  share: number;
  bias: number;
  biasSe: number;
}

/** What a shop's work is made of: all that the question needs, none of its history. */
export interface WorkingShop {
  hands: WorkingHand[];
  gauges: WorkingGauge[];
  /** Part of the setting variance that both hangers of a gauge share. */
  common: number;
  /** Sd of what a mis-set adds, mm. */
  missetSd: number;
  /** Sd of a length's setting as a multiple of the hand's setting sd. */
  lengthScatter: number;
  /** What repairs leave, as sds: a point's height, a length; and of points that were not put right. */
  body: {
    scatter: number;
    flatScatter: number;
    scatterLogSe: number;
    offShare: number;
    offShareSe: number;
    offScatter: number;
  };
  /** Stations of an ordinary job away from the zero stations, read on both sides: 0 at the front zero, 1 at the rear. */
  stations: { lever: number; tolerance: number }[];
  lengths: { count: number; tolerance: number };
  /** Readings of a dimension in one setup. */
  readings: number;
  minutes: Minutes;
}

/** Minutes of the work (judgements of ours unless the shop gives its own). */
export interface Minutes {
  /** Setting and hanging a gauge, and setting and hanging one again. */
  hang: number;
  rehang: number;
  reading: number;
  /** Working on a vehicle again and measuring it once more. */
  redo: number;
}
export const USUAL_MINUTES: Minutes = { hang: 3, rehang: 4, reading: 0.5, redo: 120 };

export interface Scenario {
  name: string;
  /** Readings of a dimension in one setup; the shop's own where absent. */
  readings?: number;
  /**
   * `out`: a height that is out is hung again once, and the second reading counts. `all`: every gauge is hung twice, the
   * zero gauges too, and the mean counts.
   */
  rehang?: 'out' | 'all';
  /** Who hangs again: the same hand or another of the shop. Only with `out`. */
  rehangBy?: 'same' | 'another';
  /** Gauges in service; all where absent. */
  gauges?: readonly string[];
}

export const MEASURES = ['falseAlarms', 'missed', 'redos', 'needlessRedos', 'missedJobs', 'minutes'] as const;
/**
 * Per 100 jobs. `falseAlarms`: dimensions called out that are within; `missed`: called within that are out; `redos`: jobs
 * called not right, `needlessRedos` those of them that are right; `missedJobs`: called right that are not; `minutes`: of
 * measuring, hanging again and re-dos.
 */
export type Measure = (typeof MEASURES)[number];

export interface Figure {
  value: number;
  low: number;
  high: number;
}

export interface WhatIfRow {
  name: string;
  /** With 95 % intervals from the standard errors of the shop's variances and rates. */
  figures: Record<Measure, Figure>;
  /** Against the first scenario, with the interval of the difference; null in the first row. */
  change: Record<Measure, Figure> | null;
}

export interface WhatIf {
  rows: WhatIfRow[];
  method: string;
  why: string | null;
}

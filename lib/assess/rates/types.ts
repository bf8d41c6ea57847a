import type { Rate } from '../types';
import type { HardnessModel } from './hardness-model';

export const RATE_GROUPINGS = ['technician', 'sheet', 'section', 'gauge', 'month', 'zone'] as const;
export type RateGrouping = (typeof RATE_GROUPINGS)[number];

/** Where a rate lies in the funnel: inside, beyond the 95 % or beyond the 99.8 % limits. */
export type FunnelPlace = 'inside' | 'low 95' | 'low 99.8' | 'high 95' | 'high 99.8';

export interface FunnelCurve {
  /** Limits of the rate of this many jobs; null without jobs. */
  low: number | null;
  high: number | null;
}

export interface FairRate extends Rate {
  name: string;
  /** The rate drawn towards that of all groups (beta-binomial), with its 95 % limits; null where it cannot be had. */
  shrunk: { mean: number | null; low: number | null; high: number | null };
  /** True where the group's own jobs say less than half of the shrunk rate, or are fewer than ten; `smallWhy` says so. */
  small: boolean;
  smallWhy: string | null;
  funnel: { place: FunnelPlace | null; at95: FunnelCurve; at998: FunnelCurve };
  /** Given how hard its jobs were. */
  adjusted: AdjustedRate;
}

export interface AdjustedRate {
  /** Right jobs, and how many would be right at the shop's rate for jobs as hard. */
  observed: number;
  expected: number | null;
  /** observed / expected with the exact 95 % interval. */
  ratio: number | null;
  low: number | null;
  high: number | null;
  /** Two-sided, adjusted over all groups of the table (Benjamini–Hochberg). */
  p: number | null;
  why: string | null;
}

export interface FairRates {
  by: RateGrouping;
  /** All jobs, or for sections and gauges all of their jobs together. */
  overall: Rate;
  /** In the order of their names, never of their rates. */
  groups: FairRate[];
  funnel: {
    /** The rate that the funnel is drawn around. */
    target: number | null;
    /** Spread between groups beyond chance, in rate, that the limits are widened for; 0 where they are plain. */
    tau: number;
    method: string;
  };
  hardness: HardnessModel | null;
  /** What a reader must know of these numbers, in sentences. */
  notes: string[];
}

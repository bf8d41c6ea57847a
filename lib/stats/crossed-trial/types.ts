import type { Label } from '@/lib/stats/variance-components';

export interface CrossedTrialInput {
  /** What was measured: one label a reading. */
  part: readonly Label[];
  /** Who measured it: one label a reading. */
  operator: readonly Label[];
  value: readonly number[];
  /** Half width of the tolerance, in the unit of the readings (±3 mm: 3). */
  tolerance?: number;
  /** Level of the intervals, 0.95 unless given. */
  level?: number;
}

export const LINES = ['part', 'operator', 'part:operator', 'repeat'] as const;
export const SUMS = ['reproducibility', 'gauge', 'total'] as const;
export type Line = (typeof LINES)[number];
/** reproducibility = operator + part:operator; gauge = reproducibility + repeat; total = gauge + part. */
export type Sum = (typeof SUMS)[number];

export interface TableLine {
  ss: number;
  df: number;
  ms: number | null;
  /** Part and operator against part:operator, that against repeat; null where there is nothing to compare with. */
  f: number | null;
  p: number | null;
}

export type Table = Record<Line, TableLine>;

/** Variances, in the unit squared; null where one cannot be had. */
export type Variances = Record<Line | Sum, number | null>;

export interface CrossedComponents {
  /** Method of moments as it comes, negative estimates included; null where the trial is not balanced. */
  anova: Variances | null;
  /** The same with negative estimates put at 0, the others left as they are. */
  truncated: Variances | null;
  /** Restricted maximum likelihood: where one component is 0 it redistributes the others. */
  reml: Variances | null;
}

export interface VarianceInterval {
  low: number | null;
  high: number | null;
}

export interface SatterthwaiteInterval extends VarianceInterval {
  /** Null, with the limits, where the estimate is not above 0. */
  df: number | null;
}

export interface MlsInterval extends VarianceInterval {
  /** The limits with what lies below 0 put at 0. */
  lowTruncated: number | null;
  highTruncated: number | null;
}

/** Intervals of variances, in the unit squared. */
export interface CrossedIntervals {
  satterthwaite: Record<Line | Sum, SatterthwaiteInterval> | null;
  /** None for reproducibility, which mixes three mean squares of both signs. */
  modifiedLargeSample: Record<Exclude<Line | Sum, 'reproducibility'>, MlsInterval> | null;
  /** Profile limits of the REML fit. */
  reml: Record<Line, VarianceInterval> | null;
}

export interface Categories {
  /** √2 × part sd / gauge sd. */
  raw: number | null;
  /** The customary count: 1.41 × part sd / gauge sd, rounded down, at least 1. */
  count: number | null;
}

export interface ByMethod<T> {
  /** From the truncated ANOVA components. */
  anova: T | null;
  reml: T | null;
}

/** What holds if part:operator is pooled with the repeats. */
export interface PooledTrial {
  table: Table;
  components: CrossedComponents;
  shareOfTolerance: ByMethod<number>;
  distinctCategories: ByMethod<Categories>;
}

export interface CrossedTrial {
  table: Table | null;
  components: CrossedComponents;
  intervals: CrossedIntervals;
  /** 6 gauge sd over the width of the tolerance (twice `tolerance`); null without a tolerance. */
  shareOfTolerance: ByMethod<number>;
  distinctCategories: ByMethod<Categories>;
  /** Whether the interaction stays in the model, by what rule, and what pooling it gives where it does not. */
  interaction: { kept: boolean; p: number | null; rule: string; pooled: PooledTrial | null };
  /** What a reader must know of these numbers, in sentences. */
  notes: string[];
  why: string | null;
}

/** The answer of a test for one outlier. */
export interface Outlier {
  /** Null where the test cannot be made, and `why` says so. */
  statistic: number | null;
  critical: number | null;
  /** Bonferroni bound of the probability of so large a statistic without an outlier. */
  p: number | null;
  /** Place of the suspect, from 0. */
  index: number | null;
  outlier: boolean;
  why: string | null;
}

/** The test cannot be made. */
export function noTest(why: string): Outlier {
  return { statistic: null, critical: null, p: null, index: null, outlier: false, why };
}

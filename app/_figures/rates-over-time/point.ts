/** Right-first-time jobs of one month with the interval of their rate. */
export interface RatePoint {
  /** `2025-03`. */
  month: string;
  jobs: number;
  right: number;
  /** Shares of one; null where no job came to an answer. */
  rate: number | null;
  low: number | null;
  high: number | null;
}

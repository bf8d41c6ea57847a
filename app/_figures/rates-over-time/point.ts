/** A share counted in one month, with its interval. */
export interface RatePoint {
  /** `2025-03`. */
  month: string;
  /** How many were counted, and how many of them hit. */
  of: number;
  hits: number;
  /** Shares of one; null where nothing was counted. */
  rate: number | null;
  low: number | null;
  high: number | null;
}

type Row = [month: string, of: number, hits: number, low: number | null, high: number | null];

/** Points as text, which goes through React's payload in one piece; the share is what the counts come to. */
export const pointsAsText = (points: readonly RatePoint[]): string =>
  JSON.stringify(points.map(({ month, of, hits, low, high }): Row => [month, of, hits, low, high]));

export const pointsFromText = (text: string): RatePoint[] =>
  (JSON.parse(text) as Row[]).map(([month, of, hits, low, high]) => ({
    month,
    of,
    hits,
    low,
    high,
    rate: of === 0 ? null : hits / of,
  }));

/** What the points are, in words. */
export interface RateWords {
  /** `Right first time`. */
  title: string;
  /** What is counted. */
  unit: 'job' | 'setup';
}

/** The top of the scale: half suffices where no interval goes beyond it. */
export function topOf(points: readonly RatePoint[]): 0.5 | 1 {
  return points.every(({ high }) => high === null || high <= 0.5) ? 0.5 : 1;
}

/** Radius of a month's dot within its line, in a figure 800 wide: smaller where so many would lie over each other. */
export const dotFor = (months: number): number => Math.min(6, Math.max(1.5, 350 / Math.max(1, months) - 1.5));

/** The lines of the scale, both ends included. */
export function linesOf(top: number): number[] {
  return [0, 0.2, 0.4, 0.6, 0.8, 1].map((share) => share * top);
}

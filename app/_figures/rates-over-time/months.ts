import { rateOf } from '@/app/_shop/rate-of';
import type { RatePoint } from './point';

interface Counted {
  /** `2025-03`. */
  month: string;
  of: number;
  hits: number;
}

/** Counts by month as points of the figure; months without any in between are there, with no rate. */
export function monthPoints(counts: readonly Counted[]): RatePoint[] {
  const byMonth = new Map(counts.map((count) => [count.month, count]));
  const keys = [...byMonth.keys()].sort();
  const first = keys[0];
  const last = keys.at(-1);
  if (first === undefined || last === undefined) return [];
  const points: RatePoint[] = [];
  for (let month = first; month <= last; month = following(month)) {
    const { of, hits } = byMonth.get(month) ?? { of: 0, hits: 0 };
    const { rate, low, high } = rateOf(hits, of);
    points.push({ month, of, hits, rate, low, high });
  }
  return points;
}

/** `2025-12` is followed by `2026-01`. */
function following(month: string): string {
  const [year = 0, number = 0] = month.split('-').map(Number);
  return number === 12 ? `${year + 1}-01` : `${year}-${String(number + 1).padStart(2, '0')}`;
}

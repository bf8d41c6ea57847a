import type { RatePoint } from '@/app/_figures/rates-over-time/point';
import { rateOf } from '@/app/_shop/rate-of';
import type { OutcomeCount } from '@/lib/store';

/** Counts by month as points of the figure; months without a job in between are there, with no rate. */
export function monthPoints(counts: readonly OutcomeCount[]): RatePoint[] {
  const byMonth = new Map(counts.map((count) => [count.key, count]));
  const keys = [...byMonth.keys()].sort();
  const first = keys[0];
  const last = keys.at(-1);
  if (first === undefined || last === undefined) return [];
  const points: RatePoint[] = [];
  for (let month = first; month <= last; month = following(month)) {
    const { jobs, right } = byMonth.get(month) ?? { jobs: 0, right: 0 };
    const { rate, low, high } = jobs === 0 ? { rate: null, low: null, high: null } : rateOf(right, jobs);
    points.push({ month, jobs, right, rate, low, high });
  }
  return points;
}

/** `2025-12` is followed by `2026-01`. */
function following(month: string): string {
  const [year = 0, number = 0] = month.split('-').map(Number);
  return number === 12 ? `${year + 1}-01` : `${year}-${String(number + 1).padStart(2, '0')}`;
}

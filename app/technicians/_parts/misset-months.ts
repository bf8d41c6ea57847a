import { DateTime } from 'luxon';
import { monthPoints } from '@/app/_figures/rates-over-time/months';
import type { RatePoint } from '@/app/_figures/rates-over-time/point';
import type { StoredHeight } from '@/lib/access';

/** A setup counts as likely mis-set when one of its heights is, more likely than not. */
const LIKELY = 0.5;

/** By month: of the setups away from the zero stations, how many were likely off by more than the tolerance. */
export function missetMonths(heights: readonly StoredHeight[], timeZone: string): RatePoint[] {
  const setups = new Map<string, { month: string; misset: boolean }>();
  for (const height of heights) {
    if (height.zero) continue;
    const key = `${height.job} ${height.setup}`;
    const month = DateTime.fromMillis(height.hungAt, { zone: timeZone }).toFormat('yyyy-MM');
    const misset = height.p.gauge + height.p.both > LIKELY || (setups.get(key)?.misset ?? false);
    setups.set(key, { month, misset });
  }
  const months = new Map<string, { month: string; of: number; hits: number }>();
  for (const { month, misset } of setups.values()) {
    const counted = months.get(month) ?? { month, of: 0, hits: 0 };
    months.set(month, { month, of: counted.of + 1, hits: counted.hits + Number(misset) });
  }
  return monthPoints([...months.values()]);
}

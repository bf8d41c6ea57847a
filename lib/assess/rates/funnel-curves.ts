import { widenedFunnelLimits } from '@/lib/stats';
import type { FairRates } from './types';

export interface FunnelPoint {
  jobs: number;
  low95: number | null;
  high95: number | null;
  low998: number | null;
  high998: number | null;
}

/** The funnel's curves for a picture, at up to some sixty numbers of jobs from 1 to `most`. */
export function funnelCurves(funnel: FairRates['funnel'], most: number): FunnelPoint[] {
  const { target, tau } = funnel;
  if (target === null || !(target > 0 && target < 1)) return [];
  const step = Math.max(1, most / 60);
  const places = new Set<number>();
  for (let jobs = 1; jobs < most; jobs += step) places.add(Math.round(jobs));
  places.add(Math.max(1, Math.round(most)));
  return [...places].map((jobs) => {
    const at95 = widenedFunnelLimits(target, jobs, tau, 0.95);
    const at998 = widenedFunnelLimits(target, jobs, tau, 0.998);
    return { jobs, low95: at95.low, high95: at95.high, low998: at998.low, high998: at998.high };
  });
}

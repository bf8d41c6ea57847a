import { overdispersion, widenedFunnelLimits } from '@/lib/stats';
import { chiSquareUpper } from '@/lib/stats/distributions';
import type { FairRate, FunnelPlace } from './types';

interface Count {
  x: number;
  n: number;
}

export interface Funnel {
  target: number | null;
  tau: number;
  method: string;
  units: FairRate['funnel'][];
}

/** With fewer groups one unusual group would widen the limits for itself and hide in them. */
const LEAST_GROUPS = 6;

/** The spread must be beyond chance at this level before the limits are widened for it. */
const SPREAD_LEVEL = 0.05;

/**
 * Funnel around the rate of all groups together, 95 % and 99.8 %: exact binomial, or, where at least six groups with jobs
 * differ beyond chance (chi-square of their winsorised distances), exact beta-binomial with that spread.
 */
export function funnelOf(counts: readonly Count[]): Funnel {
  const n = counts.reduce((sum, count) => sum + count.n, 0);
  const x = counts.reduce((sum, count) => sum + count.x, 0);
  if (n === 0) {
    const none = { low: null, high: null };
    const units = counts.map(() => ({ place: null, at95: none, at998: none }));
    return { target: null, tau: 0, method: 'There are no jobs yet.', units };
  }
  const target = x / n;
  const { tau, method } = spreadOf(counts, target);
  return { target, tau, method, units: counts.map((count) => unitOf(count, target, tau)) };
}

function spreadOf(counts: readonly Count[], target: number): { tau: number; method: string } {
  const groups = counts.filter((count) => count.n > 0).length;
  const plain = 'Exact binomial limits around the rate of all groups together.';
  if (groups < LEAST_GROUPS) {
    return {
      tau: 0,
      method: `${plain} Fewer than ${LEAST_GROUPS} groups cannot show a spread of their own.`,
    };
  }
  const { ratio, tau } = overdispersion(counts, target);
  if (ratio === null || tau === null || tau === 0) return { tau: 0, method: plain };
  if (chiSquareUpper(groups * ratio, groups - 1) > SPREAD_LEVEL) {
    return { tau: 0, method: `${plain} The groups differ no more than chance makes them.` };
  }
  const most = 0.99 * Math.sqrt(target * (1 - target));
  return {
    tau: Math.min(tau, most),
    method:
      'Beta-binomial limits: binomial ones, widened because the groups differ among themselves beyond chance ' +
      `(sd of their rates ${(100 * tau).toFixed(1)} points).`,
  };
}

function unitOf({ x, n }: Count, target: number, tau: number): FairRate['funnel'] {
  if (n === 0) return { place: null, at95: { low: null, high: null }, at998: { low: null, high: null } };
  if (target === 0 || target === 1) {
    const all = { low: target, high: target };
    return { place: 'inside', at95: all, at998: all };
  }
  const at95 = widenedFunnelLimits(target, n, tau, 0.95);
  const at998 = widenedFunnelLimits(target, n, tau, 0.998);
  const place = (): FunnelPlace => {
    if (x <= (at998.lowAlarm ?? -1)) return 'low 99.8';
    if (x >= (at998.highAlarm ?? n + 1)) return 'high 99.8';
    if (x <= (at95.lowAlarm ?? -1)) return 'low 95';
    return x >= (at95.highAlarm ?? n + 1) ? 'high 95' : 'inside';
  };
  return {
    place: place(),
    at95: { low: at95.low, high: at95.high },
    at998: { low: at998.low, high: at998.high },
  };
}

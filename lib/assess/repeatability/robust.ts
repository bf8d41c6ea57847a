import type { Observation } from '@/lib/measure';
import { algorithmS } from '@/lib/stats';

export interface RobustRepeatability {
  /** Robust standard deviation, mm; null where it cannot be had. */
  sd: number | null;
  /** Setups whose scatter was so large that it was pulled in. */
  pulled: number;
  why: string | null;
}

/**
 * Repeatability that a few wild readings hardly move, beside the pooled one: far below it means that single readings,
 * not the hand, make the scatter. Algorithm S works on standard deviations of equal degrees of freedom, so it runs for
 * each number of readings by itself, and the variances are pooled by their degrees of freedom.
 * Source: ISO 5725-5:1998, 5.3 (Algorithm S).
 */
export function robustRepeatability(
  observations: Iterable<Pick<Observation, 'n' | 'ss'>>,
): RobustRepeatability {
  const scatters = new Map<number, number[]>();
  for (const { n, ss } of observations) {
    if (n < 2) continue;
    const sds = scatters.get(n - 1) ?? [];
    sds.push(Math.sqrt(ss / (n - 1)));
    scatters.set(n - 1, sds);
  }
  if (scatters.size === 0) {
    return { sd: null, pulled: 0, why: 'No dimension was read twice with the gauge untouched.' };
  }
  const groups = [...scatters].map(([df, sds]) => ({ weight: df * sds.length, ...algorithmS(sds, df) }));
  const usable = groups.flatMap(({ sd, weight, pulled }) => (sd === null ? [] : [{ sd, weight, pulled }]));
  if (usable.length === 0) return { sd: null, pulled: 0, why: groups[0]?.why ?? null };
  const weight = usable.reduce((sum, group) => sum + group.weight, 0);
  const variance = usable.reduce((sum, group) => sum + group.weight * group.sd ** 2, 0) / weight;
  return { sd: Math.sqrt(variance), pulled: usable.reduce((sum, group) => sum + group.pulled, 0), why: null };
}

import type { Cause } from '@/lib/measure/types';

/** What is said of a height. `likely gauge` always means: hang the gauge again and read again. */
export type Call = 'likely-gauge' | 'likely-body' | 'likely-both' | 'nothing-found' | 'undecided';

/** What it costs to miss damage, as a multiple of what a needless re-hang costs. Set by the manager. */
export const DEFAULT_MISS_COST = 9;

/**
 * The careful side: a height is called likely gauge only when the risk that the body is off is smaller than
 * what a needless re-hang costs; a body is suspected as soon as it is likelier than not.
 */
export function callOf(p: Record<Cause, number>, missCost: number = DEFAULT_MISS_COST): Call {
  const sure = missCost / (1 + missCost);
  const body = p.body + p.both;
  if (p.gauge >= sure && body <= 1 - sure) return 'likely-gauge';
  if (p.neither >= sure && body <= 1 - sure) return 'nothing-found';
  if (p.both >= 0.5) return 'likely-both';
  if (body >= 0.5) return 'likely-body';
  return 'undecided';
}

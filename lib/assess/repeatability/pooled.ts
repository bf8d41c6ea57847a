import type { Observation } from '@/lib/measure';
import { sdInterval } from '@/lib/stats';
import type { SdEstimate } from '../types';

/**
 * Repeatability: the standard deviation of reading again with the gauge untouched, mm, with its 95 % interval.
 *
 * The readings of one dimension in one setup scatter about their own mean; their sums of squares are pooled over
 * setups, dimensions and quantities, each setup with n − 1 degrees of freedom.
 * Source: ISO 5725-2:1994, 7.4.5.1 (from memory); NIST/SEMATECH e-Handbook, 2.4.4.
 */
export function repeatability(observations: Iterable<Pick<Observation, 'n' | 'ss'>>): SdEstimate {
  let df = 0;
  let ss = 0;
  for (const observation of observations) {
    df += observation.n - 1;
    ss += observation.ss;
  }
  if (df === 0) {
    return {
      sd: null,
      df: null,
      low: null,
      high: null,
      why: 'No dimension was read twice with the gauge untouched.',
    };
  }
  const sd = Math.sqrt(ss / df);
  return { sd, df, ...sdInterval(sd, df) };
}

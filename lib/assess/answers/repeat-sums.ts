import type { Job } from '@/lib/measure';
import { sdInterval } from '@/lib/stats';
import type { SdEstimate } from '../types';

/** Repeats with the gauge untouched, summed by technician over all quantities. */
export class RepeatSums {
  readonly #sums = new Map<string, { df: number; ss: number; readings: number; dimensions: number }>();

  add(job: Job): void {
    for (const { setups } of job.rounds)
      for (const { technician, observations } of setups) {
        const sum = this.#sums.get(technician) ?? { df: 0, ss: 0, readings: 0, dimensions: 0 };
        for (const { n, ss, quantity } of observations) {
          sum.df += n - 1;
          sum.ss += ss;
          if (quantity !== 'height') continue;
          sum.readings += n;
          sum.dimensions += 1;
        }
        this.#sums.set(technician, sum);
      }
  }

  of(technician: string): SdEstimate {
    const { df = 0, ss = 0 } = this.#sums.get(technician) ?? {};
    if (df === 0)
      return {
        sd: null,
        df: null,
        low: null,
        high: null,
        why: 'Nothing was read again with the gauge untouched.',
      };
    const sd = Math.sqrt(ss / df);
    return { sd, df, ...sdInterval(sd, df), why: null };
  }

  /** Readings of a height in one hanging, as a rule. */
  readings(technician: string): number {
    const { readings = 0, dimensions = 0 } = this.#sums.get(technician) ?? {};
    return dimensions === 0 ? 1 : Math.max(1, Math.round(readings / dimensions));
  }
}

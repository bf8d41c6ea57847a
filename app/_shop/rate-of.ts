import type { Rate } from '@/lib/assess';
import { binomialInterval } from '@/lib/stats';

/** The rate of counted jobs with its 95 % Wilson interval. */
export function rateOf(right: number, jobs: number): Rate {
  if (jobs === 0) {
    return {
      jobs,
      right,
      rate: null,
      low: null,
      high: null,
      why: 'No job has been measured after its repair.',
    };
  }
  const { low, high } = binomialInterval(right, jobs, { method: 'wilson', level: 0.95 });
  return { jobs, right, rate: right / jobs, low, high, why: null };
}

import type { Rate } from '@/lib/assess';
import { binomialInterval } from '@/lib/stats';
import { words } from '@/app/_words/words';

/** The rate of counted jobs with its 95 % Wilson interval. */
export function rateOf(right: number, jobs: number): Rate {
  if (jobs === 0) {
    return {
      jobs,
      right,
      rate: null,
      low: null,
      high: null,
      why: words('shop')('noneMeasuredAfter'),
    };
  }
  const { low, high } = binomialInterval(right, jobs, { method: 'wilson', level: 0.95 });
  return { jobs, right, rate: right / jobs, low, high, why: null };
}

import type { Figure } from '@/app/_look/figures-row';
import { count, percent } from '@/app/_words/numbers';
import type { TechnicianRate } from '@/lib/assess';

/** Right first time as a large figure: the interval, and what the shop's rate would give for the same jobs. */
export function rateFigure(rate: TechnicianRate): Figure {
  if (rate.rate === null || rate.low === null || rate.high === null) {
    return { name: 'Right first time', value: 'none yet', detail: rate.why };
  }
  const expected = rate.expected === null ? '' : `; the shop’s rate would give ${rate.expected.toFixed(1)}`;
  return {
    name: 'Right first time',
    value: percent(rate.rate),
    detail: `${percent(rate.low)} to ${percent(rate.high)}: ${rate.right} of ${count(rate.jobs, 'job')}${expected}`,
  };
}

import type { Figure } from '@/app/_look/figures-row';
import { decimal, percent } from '@/app/_words/numbers';
import { whyTold } from '@/app/_words/why';
import { words } from '@/app/_words/words';
import type { TechnicianRate } from '@/lib/assess';

/** Right first time as a large figure: the interval, and what the shop's rate would give for the same jobs. */
export function rateFigure(rate: TechnicianRate): Figure {
  const t = words('hand');
  if (rate.rate === null || rate.low === null || rate.high === null) {
    return { name: t('rate.name'), value: t('rate.noneYet'), detail: whyTold(rate.why) };
  }
  const counted = {
    low: percent(rate.low),
    high: percent(rate.high),
    right: rate.right,
    jobs: rate.jobs,
  };
  return {
    name: t('rate.name'),
    value: percent(rate.rate),
    detail:
      rate.expected === null
        ? t('rate.detail', counted)
        : t('rate.expected', { ...counted, expected: decimal(rate.expected, 1) }),
  };
}

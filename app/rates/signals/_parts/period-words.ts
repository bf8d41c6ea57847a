import { millimetres, signedMillimetres } from '@/app/_words/numbers';
import { words } from '@/app/_words/words';
import type { Series } from '@/lib/assess/signals';

/** What one month of a series holds, with what its uncertainty rests on: `12 of 31 jobs`, `−0.42 ± 0.18 mm, 60 setups`. */
export function periodWords(series: Series, period: string): string {
  const t = words('rates');
  if (series.what === 'right-first-time') {
    const one = series.periods.find((candidate) => candidate.period === period);
    return one === undefined || one.jobs === 0
      ? t('signals.period.noJob')
      : t('signals.period.jobs', { right: one.right, jobs: one.jobs });
  }
  const one = series.periods.find((candidate) => candidate.period === period);
  if (one === undefined || one.n === 0) return t('signals.period.noSetup');
  const mean = signedMillimetres(one.mean, 2);
  if (one.n === 1) return t('signals.period.one', { mean });
  const sd = Math.sqrt(one.ss / (one.n - 1));
  return series.what === 'setting-bias'
    ? t('signals.period.mean', { mean, error: millimetres(sd / Math.sqrt(one.n), 2), n: one.n })
    : t('signals.period.scatter', { scatter: millimetres(sd, 2), n: one.n });
}

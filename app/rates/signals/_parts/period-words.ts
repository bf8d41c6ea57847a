import { signed } from '@/app/_words/numbers';
import type { Series } from '@/lib/assess/signals';

/** What one month of a series holds, with what its uncertainty rests on: `12 of 31 jobs`, `−0.42 ± 0.18 mm, 60 setups`. */
export function periodWords(series: Series, period: string): string {
  if (series.what === 'right-first-time') {
    const one = series.periods.find((candidate) => candidate.period === period);
    return one === undefined || one.jobs === 0 ? 'no job' : `${one.right} of ${one.jobs} jobs`;
  }
  const one = series.periods.find((candidate) => candidate.period === period);
  if (one === undefined || one.n === 0) return 'no setup';
  if (one.n === 1) return `${signed(one.mean, 2)} mm, 1 setup: no uncertainty`;
  const sd = Math.sqrt(one.ss / (one.n - 1));
  return series.what === 'setting-bias'
    ? `${signed(one.mean, 2)} mm, standard error ${(sd / Math.sqrt(one.n)).toFixed(2)} mm, ${one.n} setups`
    : `scatter ${sd.toFixed(2)} mm, ${one.n} setups`;
}

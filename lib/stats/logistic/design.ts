import {
  requireAllFinite,
  requireEqualLengths,
  requireNotNegative,
  requireWhole,
} from '@/lib/stats/arguments';
import type { LogisticData } from './types';

/** The covariates centred and scaled to sd 1 over the rows that have trials; rows × columns, intercept first. */
export interface Design {
  names: string[];
  rows: Float64Array[];
  means: number[];
  scales: number[];
  successes: readonly number[];
  trials: readonly number[];
}

/** Checks the data and lays out the design; a sentence instead where no fit can exist. */
export function layOut(data: LogisticData): Design | { why: string } {
  const { successes, covariates } = data;
  const trials = data.trials ?? successes.map(() => 1);
  requireEqualLengths('The successes', successes, 'the trials', trials);
  successes.forEach((x, i) => {
    const n = trials[i] ?? 0;
    requireWhole('The number of trials of a row', n);
    requireWhole('The number of successes of a row', x);
    if (x > n) throw new RangeError(`Row ${i + 1} has more successes (${x}) than trials (${n}).`);
  });
  requireNotNegative('The ridge', data.ridge ?? 0);
  const entries = Object.entries(covariates);
  for (const [name, values] of entries) {
    requireEqualLengths(`The covariate ${name}`, values, 'the successes', successes);
    requireAllFinite(`The values of ${name}`, values);
  }

  const all = trials.reduce((sum, n) => sum + n, 0);
  const good = successes.reduce((sum, x) => sum + x, 0);
  if (all === 0) return { why: 'There are no trials yet.' };
  if (good === 0 || good === all) return { why: 'All outcomes are alike, so nothing can be told from them.' };

  const means: number[] = [];
  const scales: number[] = [];
  for (const [name, values] of entries) {
    const counted = values.filter((_, i) => (trials[i] ?? 0) > 0);
    const [origin = 0] = counted;
    const mean = origin + counted.reduce((sum, value) => sum + (value - origin), 0) / counted.length;
    const squares = counted.reduce((sum, value) => sum + (value - mean) ** 2, 0);
    const scale = Math.sqrt(squares / Math.max(1, counted.length - 1));
    if (!(scale > 1e-12 * Math.abs(mean))) return { why: `The covariate ${name} is the same in every row.` };
    means.push(mean);
    scales.push(scale);
  }
  const rows = successes.map((_, i) =>
    Float64Array.from([
      1,
      ...entries.map(([, values], j) => ((values[i] ?? NaN) - (means[j] ?? NaN)) / (scales[j] ?? NaN)),
    ]),
  );
  return { names: entries.map(([name]) => name), rows, means, scales, successes, trials };
}

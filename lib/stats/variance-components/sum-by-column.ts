import type { MixedModel } from './mixed-model';

/** X' p: for every column the sum of p over its cells; the intercept, which is last, has the sum over all. */
export function sumByColumn(model: MixedModel, p: Float64Array): Float64Array {
  const { cells, columns } = model;
  const sums = new Float64Array(columns);
  for (const { column } of model.factors) {
    for (let s = 0; s < cells; s++) {
      const j = column[s] as number;
      if (j >= 0) sums[j] = (sums[j] as number) + (p[s] as number);
    }
  }
  let total = 0;
  for (let s = 0; s < cells; s++) total += p[s] as number;
  sums[columns - 1] = total;
  return sums;
}

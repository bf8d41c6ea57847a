/** Groups of readings in columns: element g belongs to group g. */
export interface CollapsedColumns {
  n: Float64Array;
  mean: Float64Array;
  ss: Float64Array;
}

/**
 * Count, mean and sum of squares of every group of readings, in two passes over the readings.
 *
 * `codes[i]` is the group of reading i, from 0 to `groups` − 1. A group without readings has n = 0 and mean 0.
 * Each group is shifted by its own first reading, as in `collapse`; sums are plain, since a group is a handful of
 * readings. The codes are trusted: callers check what comes from outside.
 */
export function collapseByCode(values: Float64Array, codes: Int32Array, groups: number): CollapsedColumns {
  const n = new Float64Array(groups);
  const mean = new Float64Array(groups);
  const ss = new Float64Array(groups);
  const origin = new Float64Array(groups);
  const left = new Float64Array(groups);
  const readings = values.length;
  for (let i = 0; i < readings; i++) {
    const g = codes[i] as number;
    const count = n[g] as number;
    if (count === 0) origin[g] = values[i] as number;
    else mean[g] = (mean[g] as number) + ((values[i] as number) - (origin[g] as number));
    n[g] = count + 1;
  }
  for (let g = 0; g < groups; g++) if ((n[g] as number) > 0) mean[g] = (mean[g] as number) / (n[g] as number);
  for (let i = 0; i < readings; i++) {
    const g = codes[i] as number;
    const difference = (values[i] as number) - (origin[g] as number) - (mean[g] as number);
    left[g] = (left[g] as number) + difference;
    ss[g] = (ss[g] as number) + difference * difference;
  }
  for (let g = 0; g < groups; g++) {
    if ((n[g] as number) === 0) continue;
    const correction = (left[g] as number) / (n[g] as number);
    ss[g] = (n[g] as number) === 1 ? 0 : Math.max(0, (ss[g] as number) - (left[g] as number) * correction);
    mean[g] = (origin[g] as number) + ((mean[g] as number) + correction);
  }
  return { n, mean, ss };
}

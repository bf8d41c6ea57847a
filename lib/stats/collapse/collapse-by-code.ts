import { addAt, at, codeAt } from '@/lib/stats/linear-algebra/element';

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
    const g = codeAt(codes, i);
    const count = at(n, g);
    if (count === 0) origin[g] = at(values, i);
    else addAt(mean, g, at(values, i) - at(origin, g));
    n[g] = count + 1;
  }
  for (let g = 0; g < groups; g++) if (at(n, g) > 0) mean[g] = at(mean, g) / at(n, g);
  for (let i = 0; i < readings; i++) {
    const g = codeAt(codes, i);
    const difference = at(values, i) - at(origin, g) - at(mean, g);
    addAt(left, g, difference);
    addAt(ss, g, difference * difference);
  }
  for (let g = 0; g < groups; g++) {
    if (at(n, g) === 0) continue;
    const correction = at(left, g) / at(n, g);
    ss[g] = at(n, g) === 1 ? 0 : Math.max(0, at(ss, g) - at(left, g) * correction);
    mean[g] = at(origin, g) + (at(mean, g) + correction);
  }
  return { n, mean, ss };
}

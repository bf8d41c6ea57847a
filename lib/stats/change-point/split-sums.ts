/** A row of values cut in two: `m` before the cut. */
export interface Split {
  m: number;
  before: number;
  after: number;
  /** Sum of squares about both means, and about the mean of all. */
  within: number;
  total: number;
  /** |t| of the difference of the means, n − 2 df. */
  t: number;
}

interface Running {
  mean: number;
  squares: number;
}

/** Every cut that leaves `least` values on each side. Means and sums of squares by Welford's stable update. */
export function splitSums(values: readonly number[], least: number): Split[] {
  const n = values.length;
  const forwards = running(values);
  const backwards = running([...values].reverse());
  const total = forwards[n]?.squares ?? 0;
  const splits: Split[] = [];
  for (let m = least; m <= n - least; m++) {
    const before = forwards[m];
    const after = backwards[n - m];
    if (!before || !after) continue;
    const within = before.squares + after.squares;
    const between = (m * (n - m) * (after.mean - before.mean) ** 2) / n;
    const t = between === 0 ? 0 : Math.sqrt((between * (n - 2)) / within);
    splits.push({ m, before: before.mean, after: after.mean, within, total, t });
  }
  return splits;
}

/** Mean and sum of squares of the first 0, 1, …, n values. */
function running(values: readonly number[]): Running[] {
  let mean = 0;
  let squares = 0;
  const list: Running[] = [{ mean, squares }];
  values.forEach((value, i) => {
    const difference = value - mean;
    mean += difference / (i + 1);
    squares += difference * (value - mean);
    list.push({ mean, squares });
  });
  return list;
}

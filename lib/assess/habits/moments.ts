/**
 * Sums over clusters (jobs) of a ratio s / n: enough for the ratio and for a standard error that allows for readings
 * of one job going together. Additive, plain JSON.
 */
export interface Moments {
  /** Clusters. */
  k: number;
  n: number;
  s: number;
  nn: number;
  ns: number;
  ss: number;
}

export const noMoments = (): Moments => ({ k: 0, n: 0, s: 0, nn: 0, ns: 0, ss: 0 });

/** The moments of one cluster: its denominator (count, or sum of squares of a regressor) and its sum. */
export function clusterOf(n: number, s: number): Moments {
  return n > 0 ? { k: 1, n, s, nn: n * n, ns: n * s, ss: s * s } : noMoments();
}

export function addMoments(a: Moments, b: Moments): Moments {
  return { k: a.k + b.k, n: a.n + b.n, s: a.s + b.s, nn: a.nn + b.nn, ns: a.ns + b.ns, ss: a.ss + b.ss };
}

export interface Ratio {
  value: number;
  variance: number;
  df: number;
}

/**
 * s / n with its variance between clusters, k / (k − 1) Σ (s_j − n_j value)² / n², with k − 1 degrees of freedom;
 * null for fewer than three clusters. Source: Cochran (1977), Sampling Techniques, 3rd ed., 2.11 (ratio estimate)
 * without the finite-population factor.
 */
export function ratioOf({ k, n, s, nn, ns, ss }: Moments): Ratio | null {
  if (k < 3 || !(n > 0)) return null;
  const value = s / n;
  const squares = Math.max(0, ss - 2 * value * ns + value * value * nn);
  return { value, variance: ((k / (k - 1)) * squares) / (n * n), df: k - 1 };
}

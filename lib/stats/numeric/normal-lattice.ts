import { requireWhole } from '@/lib/stats/arguments';
import { normalQuantile } from '@/lib/stats/distributions/normal';

const made = new Map<string, Float64Array[]>();

/**
 * `points` points of a standard normal distribution in `dimensions` dimensions, spread evenly and always the same:
 * the Kronecker sequence of the generalised golden ratio, folded so that it closes on itself (the baker's transform),
 * through the normal quantile. A mean over them integrates a smooth function of independent normal variables with an
 * error that falls nearly with the number of points, where random points fall with its root.
 * Source: Roberts (2018), the R_d sequence (from memory); Hickernell (2002) for the baker's transform.
 */
export function normalLattice(dimensions: number, points: number): Float64Array[] {
  requireWhole('The number of dimensions', dimensions);
  requireWhole('The number of points', points, 1);
  const key = `${dimensions} ${points}`;
  const known = made.get(key);
  if (known) return known;
  let ratio = 2;
  for (let i = 0; i < 60; i++) ratio = (1 + ratio) ** (1 / (dimensions + 1));
  const steps = Array.from({ length: dimensions }, (_, d) => ratio ** -(d + 1));
  const lattice = Array.from({ length: points }, (_, i) =>
    Float64Array.from(steps, (step) => {
      const share = (0.5 + (i + 1) * step) % 1;
      const folded = 1 - Math.abs(2 * share - 1);
      return normalQuantile(Math.min(1 - 1e-12, Math.max(1e-12, folded)));
    }),
  );
  made.set(key, lattice);
  return lattice;
}

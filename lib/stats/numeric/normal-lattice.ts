import { requireWhole } from '@/lib/stats/arguments';
import { normalQuantile } from '@/lib/stats/distributions/normal';

const made = new Map<string, Float64Array[]>();

/**
 * `points` points (even) of a standard normal distribution in `dimensions` dimensions, spread evenly and always the same:
 * Richtmyer's sequence (multiples of the roots of the primes, modulo 1) through the normal quantile, every point with its mirror image, so
 * that odd functions integrate to 0 exactly. A mean over them integrates a smooth function of independent normal variables with an
 * error that falls nearly with the number of points, where random points fall with its root.
 * Source: Richtmyer (1951); Genz and Bretz (2009), Computation of Multivariate Normal and t Probabilities, 4.2.2 (from memory).
 */
export function normalLattice(dimensions: number, points: number): Float64Array[] {
  requireWhole('The number of dimensions', dimensions);
  requireWhole('The number of points', points, 1);
  const key = `${dimensions} ${points}`;
  const known = made.get(key);
  if (known) return known;
  const steps = primes(dimensions).map(Math.sqrt);
  const lattice = Array.from({ length: Math.ceil(points / 2) }, (_, i) => {
    const point = Float64Array.from(steps, (step) => normalQuantile((0.5 + (i + 1) * step) % 1));
    return [point, point.map((z) => -z)];
  }).flat();
  made.set(key, lattice);
  return lattice;
}

function primes(count: number): number[] {
  const found: number[] = [];
  for (let n = 2; found.length < count; n++) if (found.every((p) => n % p !== 0)) found.push(n);
  return found;
}

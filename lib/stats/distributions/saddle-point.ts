import { logGamma } from './log-gamma';

const HALF_LOG_TWO_PI = 0.918938533204672741780329736406;

/**
 * Error of Stirling's formula: ln Γ(x + 1) − [(x + ½) ln x − x + ½ ln 2π], for x > 0.
 *
 * Source: C. Loader (2000), Fast and accurate computation of binomial probabilities. The series is
 * Stirling's (Abramowitz & Stegun 6.1.41); with seven terms it is exact to double precision from 16.
 */
export function stirlingError(x: number): number {
  if (x < 16) return logGamma(x + 1) - (x + 0.5) * Math.log(x) + x - HALF_LOG_TWO_PI;
  const s = 1 / (x * x);
  const series =
    1 / 12 - s * (1 / 360 - s * (1 / 1260 - s * (1 / 1680 - s * (1 / 1188 - s * (691 / 360360 - s / 156)))));
  return series / x;
}

/**
 * Deviance x ln(x/m) + m − x, for x ≥ 0 and m > 0, without cancellation where x is near m.
 *
 * Source: Loader (2000), function bd0: with v = (x − m)/(x + m), ln(x/m) = 2 artanh v as a series.
 */
export function deviance(x: number, m: number): number {
  if (x === 0) return m;
  const difference = x - m;
  if (Math.abs(difference) > 0.1 * (x + m)) return x * Math.log(x / m) + m - x;
  const v = difference / (x + m);
  let sum = difference * v;
  let term = 2 * x * v;
  for (let j = 3; ; j += 2) {
    term *= v * v;
    const next = sum + term / j;
    if (next === sum) return next;
    sum = next;
  }
}

/**
 * Γ(n + 1) / (Γ(x + 1) Γ(n − x + 1)) pˣ qⁿ⁻ˣ with n = x + y and q = 1 − p: the binomial probability
 * where x and y are whole, its continuation where they are not. x, y ≥ 0. Loader (2000).
 */
export function binomialTerm(x: number, y: number, p: number, q: number): number {
  if (p === 0) return x === 0 ? 1 : 0;
  if (q === 0) return y === 0 ? 1 : 0;
  const n = x + y;
  if (n === 0) return 1;
  if (x === 0) return Math.exp(y * (q > 0.5 ? Math.log1p(-p) : Math.log(q)));
  if (y === 0) return Math.exp(x * (p > 0.5 ? Math.log1p(-q) : Math.log(p)));
  const exponent =
    stirlingError(n) - stirlingError(x) - stirlingError(y) - deviance(x, n * p) - deviance(y, n * q);
  return Math.exp(exponent) * Math.sqrt(n / (2 * Math.PI * x * y));
}

/** mˣ e⁻ᵐ / Γ(x + 1): the Poisson probability of x at mean m, continued to real x ≥ 0. Loader (2000). */
export function poissonTerm(x: number, m: number): number {
  if (m === 0) return x === 0 ? 1 : 0;
  if (x === 0) return Math.exp(-m);
  return Math.exp(-stirlingError(x) - deviance(x, m)) / Math.sqrt(2 * Math.PI * x);
}

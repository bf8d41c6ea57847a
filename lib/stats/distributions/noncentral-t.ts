import { requireFinite } from '@/lib/stats/arguments';
import { integratePanels } from '@/lib/stats/numeric/gauss-legendre';
import { chiSquareDensity, chiSquareQuantile, chiSquareUpperQuantile } from './chi-square';
import { normalUpper } from './normal';

/**
 * P(T > t) of the noncentral t with `df` ≥ 1 degrees of freedom and noncentrality `delta`; absolute error
 * below 1e-11.
 *
 * ∫ P(Z > t s − delta) f(s) ds over s = √(χ²/df), by Gauss–Legendre panels in s^¼, which keeps the integrand
 * smooth at 0. Source: Johnson, Kotz and Balakrishnan (1995), Continuous Univariate Distributions 2, chapter 31.
 */
export function noncentralTUpper(t: number, df: number, delta: number): number {
  requireFinite('t', t);
  requireFinite('The noncentrality', delta);
  if (!(df >= 1))
    throw new RangeError(`The degrees of freedom of noncentral t must be at least 1; they are ${df}.`);
  const integrand = (v: number) => {
    const s = v ** 4;
    const x = df * s * s;
    return normalUpper(t * s - delta) * chiSquareDensity(x, df) * 2 * df * s * 4 * v ** 3;
  };
  const from = (chiSquareQuantile(1e-17, df) / df) ** (1 / 8);
  const to = (chiSquareUpperQuantile(1e-17, df) / df) ** (1 / 8);
  const panels = 24;
  const edges = Array.from({ length: panels + 1 }, (_, i) => from + ((to - from) * i) / panels);
  return integratePanels(integrand, edges, 16);
}

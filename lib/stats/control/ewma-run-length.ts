import { normalCdf, normalDensity, normalUpper } from '@/lib/stats/distributions';
import { gaussLegendre } from '@/lib/stats/numeric/gauss-legendre';
import { stepsToAbsorption } from './steps-to-absorption';

/**
 * Zero-state average run length of a two-sided EWMA with asymptotic limits ±L √(λ/(2 − λ)).
 *
 * The integral equation ARL(z) = 1 + ∫ ARL(y) φ((y − (1 − λ) z)/λ − shift)/λ dy over −H … H, by
 * Gauss–Legendre nodes: a chain over the start 0 and the nodes. Source: Crowder (1987).
 */
export function ewmaRunLength(lambda: number, L: number, shift: number): number {
  const limit = L * Math.sqrt(lambda / (2 - lambda));
  // The kernel is λ wide: enough nodes for each of its widths.
  const rule = gaussLegendre(Math.min(400, 40 + Math.ceil((6 * limit) / lambda)));
  const from = [0, ...rule.nodes.map((node) => node * limit)];
  const weights = [0, ...rule.weights.map((weight) => weight * limit)];
  const moves = from.map((z) =>
    Float64Array.from(
      from,
      (y, j) => ((weights[j] ?? 0) * normalDensity((y - (1 - lambda) * z) / lambda - shift)) / lambda,
    ),
  );
  const absorbed = Float64Array.from(
    from,
    (z) =>
      normalUpper((limit - (1 - lambda) * z) / lambda - shift) +
      normalCdf((-limit - (1 - lambda) * z) / lambda - shift),
  );
  return stepsToAbsorption(moves, absorbed);
}

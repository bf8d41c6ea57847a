import { normalCdf, normalDensity, normalUpper } from '@/lib/stats/distributions';
import { gaussLegendre } from '@/lib/stats/numeric/gauss-legendre';
import { stepsToAbsorption } from './steps-to-absorption';

/**
 * Average run length of the upper CUSUM S = max(0, S + x − k), alarm where S > h, from S₀ = `start`.
 *
 * Page's integral equation ARL(s) = 1 + ARL(0) Φ(k − s − shift) + ∫ ARL(y) φ(y − s + k − shift) dy over
 * 0 … h, by Gauss–Legendre nodes: a chain over the start, the reset at 0 and the nodes. Source: Page (1954).
 */
export function cusumRunLength(k: number, h: number, shift: number, start: number): number {
  const rule = gaussLegendre(Math.min(400, 40 + Math.ceil(6 * h)));
  const states = [start, 0, ...rule.nodes.map((node) => ((1 + node) * h) / 2)];
  const weights = [0, 0, ...rule.weights.map((weight) => (weight * h) / 2)];
  const moves = states.map((s) =>
    Float64Array.from(states, (y, j) =>
      j === 1 ? normalCdf(k - s - shift) : (weights[j] ?? 0) * normalDensity(y - s + k - shift),
    ),
  );
  const absorbed = Float64Array.from(states, (s) => normalUpper(h - s + k - shift));
  return stepsToAbsorption(moves, absorbed);
}

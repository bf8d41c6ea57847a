import { logGamma, normalBetween, normalCdf, normalDensity, normalUpper } from '@/lib/stats/distributions';
import { gaussLegendre } from '@/lib/stats/numeric/gauss-legendre';

export interface ControlConstants {
  n: number;
  /** Mean and standard deviation of the range of n standard normal values. */
  d2: number;
  d3: number;
  /** Mean of the sample standard deviation. */
  c4: number;
  A2: number;
  A3: number;
  D3: number;
  D4: number;
  B3: number;
  B4: number;
}

/**
 * Factors of the Shewhart charts for subgroups of n normal values, 2 ≤ n ≤ 1000, by integration (1e-10).
 *
 * d2 = E(W), d3 = sd(W), W the range; c4 = √(2/(n − 1)) Γ(n/2)/Γ((n − 1)/2); A2 = 3/(d2 √n),
 * A3 = 3/(c4 √n), D3 and D4 = 1 ∓ 3 d3/d2, B3 and B4 = 1 ∓ 3 √(1 − c4²)/c4, D3 and B3 cut at 0.
 * Source: ISO 7870-2 and ASTM E2587 for the definitions; the range's moments after Tippett (1925).
 */
export function controlConstants(n: number): ControlConstants {
  if (!Number.isInteger(n) || n < 2 || n > 1000) {
    throw new RangeError(`A subgroup has from 2 to 1000 values; ${n} were asked for.`);
  }
  const d2 = meanRange(n);
  const d3 = Math.sqrt(meanSquareRange(n) - d2 * d2);
  const c4 = Math.sqrt(2 / (n - 1)) * Math.exp(logGamma(n / 2) - logGamma((n - 1) / 2));
  const s = Math.sqrt(1 - c4 * c4);
  return {
    n,
    d2,
    d3,
    c4,
    A2: 3 / (d2 * Math.sqrt(n)),
    A3: 3 / (c4 * Math.sqrt(n)),
    D3: Math.max(0, 1 - (3 * d3) / d2),
    D4: 1 + (3 * d3) / d2,
    B3: Math.max(0, 1 - (3 * s) / c4),
    B4: 1 + (3 * s) / c4,
  };
}

const REACH = 12;

/** The trapezoidal rule on the whole line, which converges faster than any power for such integrands. */
function overTheLine(f: (x: number) => number, step: number): number {
  let sum = 0;
  for (let i = -Math.round(REACH / step); i * step <= REACH; i++) sum += f(i * step);
  return sum * step;
}

/** E(W) = ∫ 1 − Φⁿ − (1 − Φ)ⁿ dx. */
function meanRange(n: number): number {
  return overTheLine((x) => 1 - normalCdf(x) ** n - normalUpper(x) ** n, 0.02);
}

/** E(W²) = ∫ 2w (1 − F(w)) dw, F(w) = n ∫ φ(x) (Φ(x + w) − Φ(x))ⁿ⁻¹ dx, on 0 … 20 by Gauss–Legendre. */
function meanSquareRange(n: number): number {
  const { nodes, weights } = gaussLegendre(120);
  const half = 10;
  let sum = 0;
  nodes.forEach((node, i) => {
    const w = half * (1 + node);
    const below = n * overTheLine((x) => normalDensity(x) * normalBetween(x, x + w) ** (n - 1), 0.1);
    sum += (weights[i] ?? 0) * 2 * w * (1 - below);
  });
  return sum * half;
}

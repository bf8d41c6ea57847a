import { requireFinite, requireNotNegative, requirePositive } from '@/lib/stats/arguments';
import { normalCdf, normalUpper } from '@/lib/stats/distributions';
import { cusumRunLength } from './cusum-run-length';
import { ewmaRunLength } from './ewma-run-length';

/** A chart with its limits, all in standard deviations of one observation. */
export type ChartDesign =
  /** zₜ = λ xₜ + (1 − λ) zₜ₋₁, z₀ = 0; alarm where |zₜ| > L √(λ/(2 − λ)). */
  | { chart: 'ewma'; lambda: number; L: number }
  /** Sₜ = max(0, Sₜ₋₁ + xₜ − k), and the same of −x; alarm where S > h. `headStart` is S₀, default 0. */
  | { chart: 'cusum'; k: number; h: number; headStart?: number; sides?: 'both' | 'upper' | 'lower' }
  /** Single observations; alarm where |xₜ| > L. */
  | { chart: 'individuals'; L: number };

/**
 * Average number of observations until the chart alarms, the alarming one counted, for independent normal
 * observations of known sd whose mean is off by `shift` sds from the first observation on (zero state).
 *
 * EWMA and CUSUM by their integral equations, relative error below 1e-9; EWMA with its asymptotic limits
 * from the start. Both sides of a CUSUM are joined exactly.
 * RangeError where λ is not in 0 … 1, L or h not above zero, k negative, or the head start outside 0 … h.
 * Source: Crowder (1987), Technometrics 29, 401–407; Page (1954), Biometrika 41, 100–115;
 * Lucas and Crosier (1982), Technometrics 24, 199–205.
 */
export function averageRunLength(design: ChartDesign, shift = 0): number {
  requireFinite('The shift', shift);
  switch (design.chart) {
    case 'individuals':
      requirePositive('The limit L of a chart', design.L);
      return 1 / (normalUpper(design.L - shift) + normalCdf(-design.L - shift));
    case 'ewma':
      requirePositive('The limit L of a chart', design.L);
      if (!(design.lambda > 0 && design.lambda <= 1)) {
        throw new RangeError(
          `The weight lambda of an EWMA must lie above 0 and at most at 1; it is ${design.lambda}.`,
        );
      }
      return ewmaRunLength(design.lambda, design.L, shift);
    case 'cusum': {
      const { k, h, headStart = 0, sides = 'both' } = design;
      requireNotNegative('The allowance k of a CUSUM', k);
      requirePositive('The limit h of a CUSUM', h);
      if (!(headStart >= 0 && headStart <= h)) {
        throw new RangeError(`The head start must lie between 0 and h = ${h}; it is ${headStart}.`);
      }
      if (sides === 'upper') return cusumRunLength(k, h, shift, headStart);
      if (sides === 'lower') return cusumRunLength(k, h, -shift, headStart);
      return bothSides(k, h, shift, headStart);
    }
  }
}

/**
 * Both sides together: (U(u) L(0) + U(0) L(v) − U(0) L(0)) / (U(0) + L(0)) with U and L the run lengths
 * of the sides from their head starts; without head starts 1/ARL = 1/U + 1/L. Lucas and Crosier (1982).
 */
function bothSides(k: number, h: number, shift: number, headStart: number): number {
  const up = cusumRunLength(k, h, shift, 0);
  const down = cusumRunLength(k, h, -shift, 0);
  if (headStart === 0) return 1 / (1 / up + 1 / down);
  const upHead = cusumRunLength(k, h, shift, headStart);
  const downHead = cusumRunLength(k, h, -shift, headStart);
  return (upHead / up + downHead / down - 1) / (1 / up + 1 / down);
}

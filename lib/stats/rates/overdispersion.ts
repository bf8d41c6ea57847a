import { requireLevel, requireNotNegative, requireWhole } from '@/lib/stats/arguments';
import { normalUpperQuantile } from '@/lib/stats/distributions';

export interface Overdispersion {
  /** Mean square of the units' standardised distances from p0; 1 where chance alone is at work. Null: no unit. */
  ratio: number | null;
  /** Standard deviation between units beyond chance, in rate; 0 where the ratio is no larger than chance makes it. */
  tau: number | null;
  why: string | null;
}

/**
 * Spread between units beyond chance, in a funnel around `p0`.
 *
 * zᵢ = (xᵢ/nᵢ − p0)/√(p0 (1 − p0)/nᵢ), pulled in to the given share of both tails (`winsorise`, default 0.1), ratio
 * φ = Σ zᵢ²/I, and τ² = (I φ − (I − 1))/(Σ w − Σ w²/Σ w) with w = nᵢ/(p0 (1 − p0)), cut at 0. Units without trials
 * are left out. Null where p0 is 0 or 1 or fewer than two units have trials.
 * Source: Spiegelhalter (2005), Statistics in Medicine 24, 1185–1202 (formulas from memory).
 */
export function overdispersion(
  units: readonly { x: number; n: number }[],
  p0: number,
  options: { winsorise?: number } = {},
): Overdispersion {
  const { winsorise = 0.1 } = options;
  if (!(winsorise >= 0 && winsorise < 0.5)) {
    throw new RangeError(`The share of each tail to pull in must be below one half; it is ${winsorise}.`);
  }
  for (const { x, n } of units) {
    requireWhole('The number of trials of a unit', n);
    requireWhole('The number of successes of a unit', x);
    if (x > n) throw new RangeError(`A unit has more successes (${x}) than trials (${n}).`);
  }
  if (!(p0 > 0 && p0 < 1))
    return { ratio: null, tau: null, why: 'A rate of 0 or 1 leaves nothing to chance.' };
  const counted = units.filter(({ n }) => n > 0);
  const count = counted.length;
  if (count < 2) return { ratio: null, tau: null, why: 'Spread between units needs two units with trials.' };
  const variance = p0 * (1 - p0);
  const z = counted.map(({ x, n }) => (x / n - p0) / Math.sqrt(variance / n)).sort((a, b) => a - b);
  const cut = Math.floor(winsorise * count);
  const low = z[cut] ?? NaN;
  const high = z[count - 1 - cut] ?? NaN;
  const ratio = z.reduce((sum, each) => sum + Math.min(Math.max(each, low), high) ** 2, 0) / count;
  const weights = counted.map(({ n }) => n / variance);
  const total = weights.reduce((sum, w) => sum + w, 0);
  const squares = weights.reduce((sum, w) => sum + w * w, 0);
  const excess = (count * ratio - (count - 1)) / (total - squares / total);
  return { ratio, tau: Math.sqrt(Math.max(0, excess)), why: null };
}

/**
 * Funnel limits widened for a spread `tau` between units: p0 ± z √(p0 (1 − p0)/n + τ²), cut at 0 and 1.
 * A normal approximation, unlike `funnelLimits`: for n p0 (1 − p0) of about 5 and more.
 * Source: as `overdispersion`.
 */
export function overdispersedLimits(
  p0: number,
  n: number,
  tau: number,
  level = 0.95,
): { low: number; high: number } {
  if (!(p0 >= 0 && p0 <= 1))
    throw new RangeError(`The rate of a funnel must lie between 0 and 1; it is ${p0}.`);
  requireWhole('The number of trials', n, 1);
  requireNotNegative('The spread between units', tau);
  requireLevel('The level of a funnel', level);
  const half = normalUpperQuantile((1 - level) / 2) * Math.sqrt((p0 * (1 - p0)) / n + tau * tau);
  return { low: Math.max(0, p0 - half), high: Math.min(1, p0 + half) };
}

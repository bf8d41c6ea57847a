import { requireLevel, requireNotNegative, requireWhole } from '@/lib/stats/arguments';
import { funnelLimits, type FunnelLimits } from './funnel-limits';

/**
 * Funnel limits where units differ beyond chance by a standard deviation `tau` of their rates.
 *
 * The counts are beta-binomial: a unit's own rate comes from the beta distribution of mean p0 and sd tau, its count from
 * the binomial. Limits and alarms are found in the same way as `funnelLimits`, to which they go at tau = 0; so they
 * hold at small n too, where the normal limits of `overdispersedLimits` do not.
 * RangeError as `funnelLimits`, and where tau² is not below p0 (1 − p0), the most that rates can vary.
 * Source: the random-effects widening of Spiegelhalter (2005), Statistics in Medicine 24, 1185–1202, with the exact
 * beta-binomial distribution for its normal one.
 */
export function widenedFunnelLimits(p0: number, n: number, tau: number, level = 0.95): FunnelLimits {
  requireNotNegative('The spread between units', tau);
  requireWhole('The number of trials', n);
  requireLevel('The level of a funnel', level);
  if (tau === 0 || n === 0) return funnelLimits(p0, n, level);
  const strength = (p0 * (1 - p0)) / (tau * tau) - 1;
  if (!(strength > 0)) {
    throw new RangeError(
      `Rates around ${p0} cannot vary by an sd of ${tau}: ${Math.sqrt(p0 * (1 - p0))} is the most.`,
    );
  }
  const chances = betaBinomialRow(n, p0 * strength, (1 - p0) * strength);
  const below = runningSums(chances);
  const above = runningSums([...chances].reverse()).reverse();
  const atMost = (k: number) => (k < 0 ? 0 : (below[k] ?? 1));
  const atLeast = (k: number) => (k > n ? 0 : (above[k] ?? 1));
  const tail = (1 - level) / 2;
  let lowCount = 0;
  while (lowCount < n && atMost(lowCount) <= tail) lowCount++;
  let highCount = 0;
  while (highCount < n && atLeast(highCount + 1) >= tail) highCount++;
  let highAlarm = highCount;
  while (highAlarm <= n && atLeast(highAlarm) > tail) highAlarm++;
  const lowPart = (atMost(lowCount) - tail) / (chances[lowCount] ?? 1);
  const highPart = (tail - atLeast(highCount + 1)) / (chances[highCount] ?? 1);
  return {
    low: Math.max(0, (lowCount - lowPart) / n),
    high: Math.min(1, Math.max(0, (highCount - highPart) / n)),
    lowCount,
    highCount,
    lowAlarm: lowCount - 1,
    highAlarm,
    why: null,
  };
}

/** P(X = 0 … n) of the beta-binomial, by the ratios of neighbours from the likeliest count on. */
export function betaBinomialRow(n: number, alpha: number, beta: number): number[] {
  const start = Math.min(n, Math.max(0, Math.round((n * alpha) / (alpha + beta))));
  const row = new Array<number>(n + 1).fill(0);
  row[start] = 1;
  for (let k = start; k < n; k++) {
    row[k + 1] = ((row[k] ?? 0) * (n - k) * (k + alpha)) / ((k + 1) * (n - k - 1 + beta));
  }
  for (let k = start; k > 0; k--) {
    row[k - 1] = ((row[k] ?? 0) * k * (n - k + beta)) / ((n - k + 1) * (k - 1 + alpha));
  }
  const total = row.reduce((sum, value) => sum + value, 0);
  return row.map((value) => value / total);
}

function runningSums(values: readonly number[]): number[] {
  let sum = 0;
  return values.map((value) => (sum += value));
}

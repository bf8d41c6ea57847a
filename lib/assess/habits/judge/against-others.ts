import { tUpper } from '@/lib/stats/distributions';

export interface Estimate {
  value: number;
  variance: number;
  df: number;
  /**
   * Variance that its size leads one to expect where all hands are alike; absent where `variance` says so itself. By it
   * a hand is weighed among the others.
   */
  expected?: number;
}

export interface Comparison {
  /** Own value less that of the other hands. */
  difference: number;
  /** Standard error of the difference from readings alone. */
  se: number;
  /** Standard error with the spread of hands. */
  wholeSe: number;
  /** One-sided p of the difference being above and below what ordinary hands show. */
  above: number;
  below: number;
}

/** How many hands the prior spread is worth. */
const WORTH = 3;

/** How many jobs the other hands lend to the variance of each. */
const LENT = 4;

/**
 * Whether one hand lies outside of what hands of this shop differ by.
 *
 * The other hands are normal around their mean with a spread τ² of their own, estimated by moments (DerSimonian &
 * Laird 1986, Controlled Clinical Trials 7, 177–188, not truncated) and drawn towards the square of `spread`, which is
 * worth three hands; τ² is never below a quarter of that. The difference over √(own variance + variance of the others'
 * mean + τ²) is held against t, its degrees of freedom by Satterthwaite. So a hand is called different only where it
 * is beyond chance and beyond what hands differ by anyway. Null where there is no other hand.
 *
 * A small hand must not widen the spread by its chance: the others are weighed by what their size says of them
 * (`weighed`), not by what few readings happen to scatter.
 */
export function againstOthers(own: Estimate, hands: readonly Estimate[], spread: number): Comparison | null {
  if (hands.length === 0) return null;
  const others = weighed(hands);
  const tau2 = spreadOf(others, spread);
  let precision = 0;
  let weighted = 0;
  let sampling = 0;
  for (const { value, variance } of others) {
    const weight = 1 / (variance + tau2);
    precision += weight;
    weighted += weight * value;
    sampling += weight * weight * variance;
  }
  const difference = own.value - weighted / precision;
  const ofOthers = 1 / precision;
  const whole = own.variance + ofOthers + tau2;
  const parts = own.variance ** 2 / own.df + (tau2 + ofOthers) ** 2 / (WORTH + others.length - 1);
  const df = parts > 0 ? whole ** 2 / parts : Infinity;
  const wholeSe = Math.sqrt(whole);
  return {
    difference,
    se: Math.sqrt(own.variance + sampling / precision ** 2),
    wholeSe,
    above: tUpper(difference / wholeSe, df),
    below: tUpper(-difference / wholeSe, df),
  };
}

/**
 * The hands with the variance that weighs them: the expected one where it is known, else the own one with four jobs
 * lent by the others, since three jobs may agree by chance.
 */
function weighed(hands: readonly Estimate[]): Estimate[] {
  let degrees = 0;
  let squares = 0;
  for (const { variance, df } of hands) {
    if (!Number.isFinite(df)) continue;
    degrees += df;
    squares += df * variance * (df + 1);
  }
  return hands.map((hand) => {
    const { variance, df, expected } = hand;
    if (expected !== undefined) return { ...hand, variance: expected };
    if (!Number.isFinite(df)) return hand;
    const usual = squares / degrees / (df + 1);
    return { ...hand, variance: (df * variance + LENT * usual) / (df + LENT) };
  });
}

function spreadOf(others: readonly Estimate[], spread: number): number {
  const prior = spread ** 2;
  const between = others.length - 1;
  if (between === 0) return prior;
  let sum = 0;
  let squares = 0;
  let weighted = 0;
  for (const { value, variance } of others) {
    const weight = 1 / Math.max(variance, 1e-12);
    sum += weight;
    squares += weight * weight;
    weighted += weight * value;
  }
  const mean = weighted / sum;
  let q = 0;
  for (const { value, variance } of others) q += (value - mean) ** 2 / Math.max(variance, 1e-12);
  const found = (q - between) / (sum - squares / sum);
  return Math.max(prior / 4, (WORTH * prior + between * found) / (WORTH + between));
}

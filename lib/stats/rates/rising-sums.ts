/**
 * The log-likelihood of the beta-binomial in the mean μ = α/(α + β) and the spread θ = 1/(α + β), without
 * the binomial coefficients:
 *
 *     ℓ(μ, θ) = Σ_units [ Σ_{i<x} ln(μ + iθ) + Σ_{i<n−x} ln(1 − μ + iθ) − Σ_{i<n} ln(1 + iθ) ]
 *
 * the ratio of beta functions written as rising products. It is regular at θ = 0, the binomial, so that
 * 'no more spread than binomial' is an ordinary boundary instead of a flight to infinity; and it is concave
 * in μ. Units collapse to counts: `right[i]` is the number of units with x > i, and so on.
 */
export interface RisingSums {
  right: number[];
  wrong: number[];
  trials: number[];
}

export function risingSums(units: readonly { x: number; n: number }[]): RisingSums {
  return {
    right: exceeding(units.map(({ x }) => x)),
    wrong: exceeding(units.map(({ x, n }) => n - x)),
    trials: exceeding(units.map(({ n }) => n)),
  };
}

/** How many of the counts are larger than 0, 1, 2, … */
function exceeding(counts: readonly number[]): number[] {
  const largest = counts.reduce((most, count) => Math.max(most, count), 0);
  const at = new Array<number>(largest + 1).fill(0);
  for (const count of counts) at[count] = (at[count] ?? 0) + 1;
  let left = counts.length;
  return at.slice(0, largest).map((here) => (left -= here));
}

export function logLikelihood(sums: RisingSums, mean: number, spread: number): number {
  let total = 0;
  sums.right.forEach((count, i) => (total += count * Math.log(mean + i * spread)));
  sums.wrong.forEach((count, i) => (total += count * Math.log(1 - mean + i * spread)));
  sums.trials.forEach((count, i) => (total -= count * Math.log1p(i * spread)));
  return total;
}

/** ∂ℓ/∂θ at fixed μ, which at the best μ is the slope of the profile. */
export function spreadSlope(sums: RisingSums, mean: number, spread: number): number {
  let total = 0;
  sums.right.forEach((count, i) => (total += (count * i) / (mean + i * spread)));
  sums.wrong.forEach((count, i) => (total += (count * i) / (1 - mean + i * spread)));
  sums.trials.forEach((count, i) => (total -= (count * i) / (1 + i * spread)));
  return total;
}

/** The mean μ that is best at a given spread: the root of a falling function, by bracketed Newton steps. */
export function bestMean(sums: RisingSums, spread: number): number {
  let low = 0;
  let high = 1;
  let mean = 0.5;
  for (let step = 0; step < 200; step++) {
    let slope = 0;
    let bend = 0;
    sums.right.forEach((count, i) => {
      slope += count / (mean + i * spread);
      bend += count / (mean + i * spread) ** 2;
    });
    sums.wrong.forEach((count, i) => {
      slope -= count / (1 - mean + i * spread);
      bend += count / (1 - mean + i * spread) ** 2;
    });
    if (slope > 0) low = mean;
    else high = mean;
    let next = mean + slope / bend;
    if (!(next > low && next < high)) next = (low + high) / 2;
    if (Math.abs(next - mean) <= 1e-16 || next === mean) return next;
    mean = next;
  }
  return mean;
}

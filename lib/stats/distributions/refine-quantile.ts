/**
 * Polishes a quantile until the tail function gives back its probability.
 *
 * Solves tail(x) = p on the positive axis by Newton steps on ln tail against ln x, which is nearly a
 * straight line in either tail, kept inside a bracket that every step narrows. `rising` says whether the
 * tail grows with x (a lower tail) or falls (an upper tail). `start` may be anything; a bad one costs
 * a few steps of bisection.
 */
export function refineQuantile(
  start: number,
  p: number,
  rising: boolean,
  tail: (x: number) => number,
  density: (x: number) => number,
): number {
  let low = 0;
  let high = Infinity;
  let x = start > 0 && start < Infinity ? start : 1;
  for (let step = 0; step < 200; step++) {
    const value = tail(x);
    if (value === p) return x;
    if (value < p === rising) low = x;
    else high = x;
    const slope = (density(x) * x) / value;
    const shift = Math.log(value / p) / slope;
    let next = x * Math.exp(rising ? -shift : shift);
    if (!(next > low && next < high)) next = between(low, high);
    if (Math.abs(next - x) <= 2e-16 * x || next === low || next === high) return next;
    x = next;
  }
  return x;
}

/** The geometric middle of a bracket, an end of which may still be open. */
function between(low: number, high: number): number {
  if (high === Infinity) return low === 0 ? 1 : low * 16;
  if (low === 0) return high / 16;
  return Math.sqrt(low) * Math.sqrt(high);
}

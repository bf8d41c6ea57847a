const TINY = 1e-300;

/**
 * b₀ + a₁/(b₁ + a₂/(b₂ + …)), evaluated forwards to no change.
 *
 * `term(i)` gives [aᵢ, bᵢ] for i ≥ 1. Throws a RangeError if `limit` terms do not settle it.
 * Source: W. J. Lentz (1976), Applied Optics 15, 668, as modified by Thompson and Barnett (1986).
 */
export function continuedFraction(b0: number, term: (i: number) => [number, number], limit: number): number {
  let value = b0 === 0 ? TINY : b0;
  let c = value;
  let d = 0;
  for (let i = 1; i <= limit; i++) {
    const [a, b] = term(i);
    d = b + a * d;
    if (d === 0) d = TINY;
    d = 1 / d;
    c = b + a / c;
    if (c === 0) c = TINY;
    const factor = c * d;
    value *= factor;
    if (Math.abs(factor - 1) <= 2.3e-16) return value;
  }
  throw new RangeError(`A continued fraction did not settle in ${limit} terms.`);
}

import { choleskyInPlace, inverseFromCholesky } from '@/lib/stats/linear-algebra/cholesky';
import { NEAR_BINS } from '../tally';

export interface Middle {
  seen: number;
  /** Readings that the bins around lead one to expect in the middle. */
  expected: number;
  /** ln(seen / expected), and its variance. */
  excess: number;
  variance: number;
}

const TERMS = 4;

/** Constant, slope, curvature, and what readings on whole millimetres gain over those on halves. */
const termsAt = (bin: number): number[] => {
  const d = bin / 2;
  return [1, d, d * d, bin % 2 === 0 ? 1 : 0];
};

/**
 * How many readings the middle bin should hold, from the ten bins around it: a Poisson regression with a quadratic in
 * its logarithm (a normal density) and a step for whole millimetres, by iterated weighted least squares; the middle bin
 * itself takes no part. Null for fewer than 60 readings or where the fit has no answer.
 * Source: McCullagh & Nelder (1989), Generalized Linear Models, 2nd ed., 2.5 and 6.
 */
export function smoothMiddle(bins: readonly number[]): Middle | null {
  if (bins.reduce((sum, count) => sum + count, 0) < 60) return null;
  const around = bins.flatMap((count, i) =>
    i === NEAR_BINS ? [] : [{ count, terms: termsAt(i - NEAR_BINS) }],
  );
  const total = around.reduce((sum, { count }) => sum + count, 0);
  if (total === 0) return null;
  let beta = [Math.log(total / around.length), 0, 0, 0];
  let inverse = new Float64Array(TERMS * TERMS);
  for (let pass = 0; pass < 50; pass++) {
    const information = new Float64Array(TERMS * TERMS);
    const score = new Float64Array(TERMS);
    for (const { count, terms } of around) {
      const mean = Math.exp(dot(terms, beta));
      terms.forEach((a, i) => {
        score[i] = (score[i] ?? 0) + a * (count - mean);
        terms.forEach((b, j) => {
          information[i * TERMS + j] = (information[i * TERMS + j] ?? 0) + a * b * mean;
        });
      });
    }
    if (choleskyInPlace(information, TERMS) >= 0) return null;
    inverse = new Float64Array(TERMS * TERMS);
    inverseFromCholesky(information, TERMS, inverse);
    const step = beta.map((_, i) =>
      beta.reduce((sum, __, j) => sum + (inverse[i * TERMS + j] ?? 0) * (score[j] ?? 0), 0),
    );
    const longest = Math.max(...step.map(Math.abs));
    if (!Number.isFinite(longest)) return null;
    const scale = Math.min(1, 2 / Math.max(longest, 1e-300));
    beta = beta.map((value, i) => value + scale * (step[i] ?? 0));
    if (longest < 1e-9) break;
    if (pass === 49) return null;
  }
  const at = termsAt(0);
  const seen = bins[NEAR_BINS] ?? 0;
  const expected = Math.exp(dot(at, beta));
  let variance = 0;
  at.forEach((a, i) => at.forEach((b, j) => (variance += a * b * (inverse[i * TERMS + j] ?? 0))));
  return {
    seen,
    expected,
    excess: Math.log((seen + 0.5) / (expected + 0.5)),
    variance: variance + 1 / (seen + 0.5),
  };
}

const dot = (a: readonly number[], b: readonly number[]): number =>
  a.reduce((sum, value, i) => sum + value * (b[i] ?? 0), 0);

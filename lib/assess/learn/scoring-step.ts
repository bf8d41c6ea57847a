import {
  choleskyInPlace,
  inverseFromCholesky,
  solveLower,
  solveUpper,
} from '@/lib/stats/linear-algebra/cholesky';
import { partWithin, type Scores } from './scores';

/** A parameter's normal prior: its precision, and how far from its centre the scores were taken. */
export interface Prior {
  precision: number;
  from: number;
}

/**
 * Of what is expected of the information at most so much is taken to be missing: on each parameter, and on any sum of
 * them. More can seem to be far from the likeliest, and a step would know no bounds.
 */
const MISSING = 0.5;
const MISSING_OF_SUMS = 0.75;

/**
 * Where the scores would be zero, from where they were taken, and the covariance of the estimates there.
 *
 * The step goes by the information that the model expects, less what is missing of it. The squares of the scores would
 * not do: far from the likeliest they tell how far it is, and a step comes out half as long or twice as long as it
 * should. For the covariance it is they that count, since they hold what the readings turned out to tell.
 * @param priors by row of the scores.
 */
export function scoringStep(
  found: Scores,
  priors: readonly Prior[],
): { step: Float64Array; covariance: Float64Array } {
  const n = found.keys.length;
  const step = found.score.map((value, i) => value - (priors[i]?.precision ?? 0) * (priors[i]?.from ?? 0));
  const lower = expectedFactor(found, priors);
  solveLower(lower, n, step);
  solveUpper(lower, n, step);
  const covariance = new Float64Array(n * n);
  const seen = withPriors(found.information, priors);
  mustBePositive(choleskyInPlace(seen, n));
  inverseFromCholesky(seen, n, covariance);
  return { step, covariance };
}

/** Cholesky factor of the information that is expected, less what is missing of it. */
function expectedFactor({ keys, expected, missing }: Scores, priors: readonly Prior[]): Float64Array {
  const n = keys.length;
  const part = Float64Array.from({ length: n }, (_, i) => {
    const at = i * n + i;
    return partWithin(missing[at] ?? 0, MISSING * (expected[at] ?? 0));
  });
  const less = (share: number, of: number): Float64Array =>
    withPriors(
      expected.map((value, at) => {
        const both = (part[Math.floor(at / n)] ?? 0) * (part[at % n] ?? 0);
        return share * value - of * both * (missing[at] ?? 0);
      }),
      priors,
    );
  let of = 1;
  while (of > 0.1 && choleskyInPlace(less(MISSING_OF_SUMS, of), n) >= 0) of /= 2;
  const lower = less(1, of > 0.1 ? of : 0);
  mustBePositive(choleskyInPlace(lower, n));
  return lower;
}

function withPriors(information: Float64Array, priors: readonly Prior[]): Float64Array {
  const matrix = information.slice();
  priors.forEach(({ precision }, i) => {
    const at = i * (priors.length + 1);
    matrix[at] = (matrix[at] ?? 0) + precision;
  });
  return matrix;
}

function mustBePositive(failed: number): void {
  if (failed >= 0)
    throw new RangeError(`Information with its prior is not positive definite (row ${failed + 1}).`);
}

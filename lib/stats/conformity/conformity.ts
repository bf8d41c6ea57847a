import { requireFinite, requireNotNegative } from '@/lib/stats/arguments';
import { normalBetween, normalCdf, normalUpper } from '@/lib/stats/distributions';
import { toleranceLimits, type Tolerance } from './tolerance';

export interface ConformityQuestion extends Tolerance {
  /** The measured value, in the unit of the limits. */
  value: number;
  /** Its standard uncertainty (not expanded), in the same unit. */
  uncertainty: number;
}

export interface Conformity {
  /** That the true value lies within the limits. */
  probability: number;
  /** That it lies outside: 1 − probability, with its own digits where it is small. */
  nonconforming: number;
  below: number;
  above: number;
}

/**
 * Probability that a true value lies within its tolerance, given one measured value with normal error and
 * nothing else known: Φ((upper − y)/u) − Φ((lower − y)/u), each part from its own tail, so that it holds
 * to 1e-10 down to 1e-30. With u = 0 it is 1 on and within the limits and 0 outside.
 *
 * RangeError for a value that is not finite, a negative uncertainty, or crossed limits.
 * Source: JCGM 106:2012, 7.2 to 7.4.
 */
export function conformity({ value, uncertainty, ...tolerance }: ConformityQuestion): Conformity {
  requireFinite('The measured value', value);
  requireNotNegative('The standard uncertainty', uncertainty);
  const { lower, upper } = toleranceLimits(tolerance);
  if (uncertainty === 0) {
    const below = value < lower ? 1 : 0;
    const above = value > upper ? 1 : 0;
    return { probability: 1 - below - above, nonconforming: below + above, below, above };
  }
  const a = (lower - value) / uncertainty;
  const b = (upper - value) / uncertainty;
  const below = normalCdf(a);
  const above = normalUpper(b);
  return { probability: normalBetween(a, b), nonconforming: below + above, below, above };
}

import { meanInterval } from '@/lib/stats';
import { requireFinite, requireNotNegative } from '@/lib/stats/arguments';
import type { Verification } from './types';

export interface Reference {
  /** Length of the reference, or the assigned value of the check standard, mm, with its standard uncertainty. */
  value: number;
  uncertainty: number;
}

/**
 * A verification from its readings: mean less the reference, with u² = scatter²/n + u(reference)². The scatter is that of
 * the hand that read (its repeatability), or, where none is given, of these readings; then there must be two at least.
 * RangeError for no readings, or one without a scatter. Source: JCGM 100:2008 (GUM), 4.2.3 and 5.1.2.
 */
export function againstReference(
  at: number,
  readings: readonly number[],
  reference: Reference,
  scatter: number | null = null,
): Verification {
  requireFinite('The reference', reference.value);
  requireNotNegative('The uncertainty of the reference', reference.uncertainty);
  const { mean, sd } = meanInterval(readings);
  if (mean === null) throw new RangeError('A verification needs a reading.');
  const own = scatter ?? sd;
  if (own === null) {
    throw new RangeError(
      'One reading shows no scatter: read twice, or give the repeatability of the hand that read.',
    );
  }
  requireNotNegative('The scatter of a reading', own);
  return {
    at,
    error: mean - reference.value,
    uncertainty: Math.hypot(own / Math.sqrt(readings.length), reference.uncertainty),
  };
}

import type { Round } from '@/lib/measure/types';
import type { Learned } from '../cause/learned';
import { lengthSd } from '../cause/lengths';
import { handOf } from '../cause/model';
import { recordedLengths } from '../recorded';
import type { RecordedDimension } from '../types';

/** One-sided 95 % of the normal distribution: how far beyond the tolerance counts as beyond doubt. */
const COVERAGE = 1.645;

const mm = (value: number): string => `${Math.abs(value).toFixed(1)} mm`;

/**
 * The center section carries the datum: where one of its lengths or diagonals is out of tolerance by more than
 * its uncertainty, no height of the round is decided. Common practice: center section first. The lengths are those
 * that count for the record, so that of two lengths with one name neither can hide behind the other.
 * @returns the reason, or null where the center section carries the datum.
 */
export function whyUndecidable(round: Round, learned: Learned): string | null {
  const zeroPoints = zeroNames(round);
  const out: string[] = [];
  for (const length of recordedLengths(round)) {
    if (!inCenter(length, zeroPoints)) continue;
    const uncertainty = COVERAGE * lengthSd(length, handOf(learned, length.technician), learned);
    if (Math.abs(length.deviation) - uncertainty <= length.tolerance) continue;
    const direction = length.deviation > 0 ? 'long' : 'short';
    out.push(
      `${length.point} is ${mm(length.deviation)} too ${direction} (tolerance ${length.tolerance} mm, uncertainty ${mm(uncertainty)})`,
    );
  }
  if (out.length === 0) return null;
  return `The center section does not carry the datum: ${out.join('; ')}. Measure these again, and restore the center section first; until then no height of this round is decided.`;
}

/** Names of the zero points, by letter alone and with their side. */
export function zeroNames(round: Round): Set<string> {
  const names = new Set<string>();
  for (const setup of round.setups) {
    for (const seen of setup.observations) {
      if (seen.quantity !== 'height' || !seen.zero || seen.side === null) continue;
      names.add(seen.point);
      names.add(`${seen.point}.${seen.side}`);
    }
  }
  return names;
}

/** Whether a length belongs to the center section: as the sheet says, else where both ends are zero points. */
export function inCenter(
  length: Pick<RecordedDimension, 'section' | 'point'>,
  zeroPoints: ReadonlySet<string>,
): boolean {
  if (length.section !== null) return length.section === 'center';
  return length.point.split('-').every((end) => zeroPoints.has(end));
}

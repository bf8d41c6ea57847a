import { millimetres } from '@/app/_words/numbers';
import type { Speech } from '@/app/_words/speech';
import { fitOf, type LengthRow, type PointRow } from '@/lib/measure/sheet';
import type { Say } from './say';

/** How a length stands beside its points: as what it fits, or what it would be where no value is typed yet. */
export function fitWords(
  length: LengthRow,
  points: readonly PointRow[],
  say: Say,
  speech: Speech,
): string | null {
  const { fits, expected, kind } = fitOf(length, points);
  if (Number.isFinite(length.nominal)) {
    if (fits === null) return say('fits.none');
    const as = say(`fits.${fits}`);
    return kind === null || fits === 'unknown' ? as : `${say(`kind.${kind}`)}, ${as}`;
  }
  const told = expected.flatMap(({ kind: of, pointToPoint }) =>
    pointToPoint === null
      ? []
      : [`${of === null ? '' : `${say(`kind.${of}`)} `}${millimetres(pointToPoint, 1, speech)}`],
  );
  return told.length === 0 ? null : say('fits.comesTo', { lengths: told.join(', ') });
}

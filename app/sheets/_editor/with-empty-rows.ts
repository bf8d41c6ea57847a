import { emptyLength, emptyPoint, isBlankLength, isBlankPoint, type TypedSheet } from '@/lib/measure/sheet';

/** Without scripts this many rows more can be filled before the sheet is checked and more come. */
const MORE = 4;
const LEAST = 8;

/** What was typed, empty rows within it left out, with empty ones behind it to go on in. */
export function withEmptyRows(typed: TypedSheet): TypedSheet {
  const points = typed.points.filter((row) => !isBlankPoint(row));
  const lengths = typed.lengths.filter((row) => !isBlankLength(row));
  const more = (there: number) => Math.max(MORE, LEAST - there);
  return {
    points: [...points, ...Array.from({ length: more(points.length) }, emptyPoint)],
    lengths: [...lengths, ...Array.from({ length: more(lengths.length) }, emptyLength)],
  };
}

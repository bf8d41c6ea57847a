import { lengthEnds } from '@/lib/measure/dimension';
import type { Dimension, Section } from '@/lib/measure/types';
import type { SheetContent, SheetPoint } from './content';
import { lengthName, type LengthRow, type PointRow, type SheetRows } from './rows';
import { sidesOf } from './sides';

/**
 * A sheet as entered, as it is kept: an entry for both sides becomes two points and two heights. Rows are taken to
 * have no fault (`checkRows`); a height without a station is left out.
 */
export function expandRows({ points, lengths }: SheetRows): SheetContent {
  return {
    points: points.flatMap(pointsOf),
    dimensions: [
      ...lengths.map((length) => lengthOf(length, points)),
      ...points.flatMap(heightsOf),
      ...points.flatMap(centerlineOf),
    ],
  };
}

function pointsOf(row: PointRow): SheetPoint[] {
  const { letter, description, feature, section, station, zero, halfWidth } = row;
  return sidesOf(row.side).map((side) => ({
    letter,
    side,
    description,
    feature,
    section,
    station,
    zero,
    halfWidth,
  }));
}

function heightsOf({ letter, side, section, station, zero, height, tolerance }: PointRow): Dimension[] {
  if (height === null || station === null) return [];
  return sidesOf(side).flatMap((one): Dimension[] =>
    one === null
      ? []
      : [
          {
            quantity: 'height',
            point: letter,
            side: one,
            section,
            station,
            zero,
            nominal: height,
            tolerance,
          },
        ],
  );
}

function centerlineOf({ letter, section, station, zero, centerline, tolerance }: PointRow): Dimension[] {
  if (centerline === null || station === null) return [];
  const dimension = { quantity: 'centerline', point: letter, side: null, section, station, zero } as const;
  return [{ ...dimension, nominal: centerline, tolerance }];
}

function lengthOf(length: LengthRow, points: readonly PointRow[]): Dimension {
  return {
    quantity: 'length',
    point: lengthName(length),
    side: null,
    station: null,
    zero: false,
    section: sectionOfLength(lengthName(length), points),
    nominal: length.nominal,
    tolerance: length.tolerance,
  };
}

/** A length that leaves the center section belongs to the section it reaches; null where an end's is not said. */
export function sectionOfLength(
  point: string,
  points: readonly Pick<PointRow, 'letter' | 'section'>[],
): Section | null {
  const sections = (lengthEnds(point) ?? []).map(
    (end) => points.find(({ letter, section }) => letter === end.point && section !== null)?.section ?? null,
  );
  const known = sections.filter((section) => section !== null);
  const outer = known.find((section) => section !== 'center');
  if (outer !== undefined) return outer;
  return known.length === 2 ? 'center' : null;
}

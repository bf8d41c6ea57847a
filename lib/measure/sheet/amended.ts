import { lengthEnds } from '@/lib/measure/dimension';
import type { Dimension } from '@/lib/measure/types';
import type { SheetContent, SheetPoint } from './content';
import { sectionOfLength } from './expand';
import { matchDimensions } from './match';

/** Values closer than this are one value that was shown in other units, mm. */
const SAME = 0.005;

/**
 * A corrected sheet with everything left as it stood that was not changed: values that only went through other units,
 * and the section of a length where that of its ends is the same.
 */
export function amended(before: SheetContent, after: SheetContent): SheetContent {
  const points = after.points.flatMap((point): SheetPoint[] => {
    const known = before.points.find(({ letter, side }) => letter === point.letter && side === point.side);
    if (known === undefined) return isImplied(point, before.dimensions) ? [] : [point];
    const station = kept(known.station, point.station);
    return [{ ...point, station, halfWidth: kept(known.halfWidth, point.halfWidth) }];
  });
  const dimensions = matchDimensions(before.dimensions, after.dimensions).flatMap(([known, dimension]) => {
    if (dimension === null) return [];
    return [known === null ? dimension : amendedDimension(known, dimension, before, after)];
  });
  return { points, dimensions };
}

/** A sheet that measurement files brought has no points: one that says no more than its dimensions is none yet. */
function isImplied({ letter, description, feature, halfWidth }: SheetPoint, known: readonly Dimension[]) {
  if (description !== null || feature !== null || halfWidth !== null) return false;
  return known.some(({ quantity, point }) =>
    quantity === 'length' ? (lengthEnds(point) ?? []).some((end) => end.point === letter) : point === letter,
  );
}

function amendedDimension(
  known: Dimension,
  dimension: Dimension,
  before: SheetContent,
  after: SheetContent,
): Dimension {
  const { point, quantity } = dimension;
  const unmoved =
    quantity === 'length' && sectionOfLength(point, before.points) === sectionOfLength(point, after.points);
  return {
    ...dimension,
    section: unmoved ? known.section : dimension.section,
    station: kept(known.station, dimension.station),
    nominal: kept(known.nominal, dimension.nominal),
    tolerance: kept(known.tolerance, dimension.tolerance),
  };
}

function kept<Value extends number | null>(known: Value, value: Value): Value {
  return known !== null && value !== null && Math.abs(known - value) < SAME ? known : value;
}

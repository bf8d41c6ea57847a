import { lengthEnds } from '@/lib/measure/dimension';
import { DEFAULT_TOLERANCE } from '@/lib/measure/trade';
import type { Dimension, Side } from '@/lib/measure/types';
import { kindOf } from './fit';
import type { SheetContent, SheetPoint } from './content';
import type { LengthRow, PointRow, SheetRows } from './rows';

/**
 * A sheet as it is kept, as it would be entered: points in the order of their stations, one entry where left and right
 * are alike. Points that only a dimension names have an entry too.
 */
export function rowsOf(content: SheetContent): SheetRows {
  const points = pointRows(content);
  const lengths = content.dimensions
    .filter(({ quantity }) => quantity === 'length')
    .map((dimension) => lengthRow(dimension))
    .filter((row) => row !== null);
  return { points, lengths: lengths.map((row) => ({ ...row, kind: kindOf(row, points) })) };
}

function pointRows(content: SheetContent): PointRow[] {
  const centerline = content.dimensions.filter(({ quantity }) => quantity === 'centerline');
  const rows = joined(placesOf(content).map((place) => rowAt(place, content)));
  for (const pin of centerline) {
    const home = rows.find(
      (row) =>
        row.letter === pin.point &&
        row.side !== 'R' &&
        row.station === pin.station &&
        row.section === pin.section &&
        row.zero === pin.zero &&
        row.tolerance === pin.tolerance &&
        row.centerline === null,
    );
    if (home !== undefined) home.centerline = pin.nominal;
    else rows.push(rowOfPin(pin));
  }
  const order = ({ station }: PointRow) => station ?? Infinity;
  return rows.sort(
    (a, b) =>
      (order(a) === order(b) ? 0 : order(a) - order(b)) ||
      (a.letter < b.letter ? -1 : a.letter > b.letter ? 1 : SIDE_ORDER[a.side] - SIDE_ORDER[b.side]),
  );
}

const SIDE_ORDER = { both: 0, L: 1, R: 2, center: 3 };

/** Every point that the sheet names, each side by itself. */
function placesOf({ points, dimensions }: SheetContent): Pick<SheetPoint, 'letter' | 'side'>[] {
  const places = new Map<string, Pick<SheetPoint, 'letter' | 'side'>>();
  const add = (letter: string, side: Side | null) => places.set(`${letter} ${side ?? ''}`, { letter, side });
  for (const { letter, side } of points) add(letter, side);
  for (const { quantity, point, side } of dimensions) if (quantity === 'height') add(point, side);
  const letters = new Set([...places.values()].map(({ letter }) => letter));
  for (const { quantity, point } of dimensions) {
    if (quantity !== 'length') continue;
    for (const end of lengthEnds(point) ?? []) {
      if (letters.has(end.point) && (end.side === null || places.has(`${end.point} ${end.side}`))) continue;
      for (const side of end.side === null ? (['L', 'R'] as const) : [end.side]) add(end.point, side);
    }
  }
  return [...places.values()];
}

function rowAt({ letter, side }: Pick<SheetPoint, 'letter' | 'side'>, content: SheetContent): PointRow {
  const point = content.points.find((one) => one.letter === letter && one.side === side);
  const height = content.dimensions.find(
    (one) => one.quantity === 'height' && one.point === letter && one.side === side,
  );
  return {
    letter,
    side: side ?? 'center',
    description: point?.description ?? null,
    feature: point?.feature ?? null,
    // What readings were taken against counts, where the two differ.
    section: height?.section ?? point?.section ?? null,
    station: height?.station ?? point?.station ?? null,
    height: height?.nominal ?? null,
    halfWidth: point?.halfWidth ?? null,
    zero: height?.zero ?? point?.zero ?? false,
    tolerance: height?.tolerance ?? pinTolerance(content, letter, side) ?? DEFAULT_TOLERANCE,
    centerline: null,
  };
}

const pinTolerance = ({ dimensions }: SheetContent, letter: string, side: Side | null) =>
  side === null
    ? dimensions.find(({ quantity, point }) => quantity === 'centerline' && point === letter)?.tolerance
    : undefined;

/** Left and right of one letter that are alike become one entry. */
function joined(rows: PointRow[]): PointRow[] {
  return rows.flatMap((row) => {
    const other = rows.find(
      (one) => one.letter === row.letter && one.side === (row.side === 'L' ? 'R' : 'L') && one !== row,
    );
    if (other === undefined || row.side === 'center' || !alike(row, other)) return [row];
    return row.side === 'L' ? [{ ...row, side: 'both' }] : [];
  });
}

const alike = ({ side: _, ...a }: PointRow, { side: __, ...b }: PointRow): boolean =>
  (Object.keys(a) as (keyof typeof a)[]).every((key) => a[key] === b[key]);

const rowOfPin = ({ point, section, station, zero, nominal, tolerance }: Dimension): PointRow => ({
  letter: point,
  side: 'center',
  description: null,
  feature: null,
  section,
  station,
  zero,
  tolerance,
  height: null,
  halfWidth: null,
  centerline: nominal,
});

function lengthRow({ point, nominal, tolerance }: Dimension): LengthRow | null {
  const [from, to] = point.split('-').map((end) => end.trim());
  return from === undefined || to === undefined ? null : { from, to, kind: null, nominal, tolerance };
}

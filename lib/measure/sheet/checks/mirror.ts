import { atPoint, remark, type Remark } from '../remark';
import type { PointRow } from '../rows';

/** Sides of one station that differ by less are the rounding of a sheet, mm. */
const ALIKE = 0.05;

type Indexed = PointRow & { index: number };

/**
 * Left and right that are not alike. Many sheets have such points, but a slip of typing looks the same, so it is to be
 * looked at. Sides belong together by their letter or, where each side has its own, by their station.
 */
export function checkMirror(points: readonly PointRow[]): Remark[] {
  return pairs(points).flatMap(([left, right]) => {
    const letters = left.letter === right.letter ? left.letter : `${left.letter}, ${right.letter}`;
    const differ = (
      column: 'station' | 'height' | 'halfWidth',
      code: 'mirror-station' | 'mirror-height' | 'mirror-half-width',
    ) => {
      const [a, b] = [left[column], right[column]];
      if (a === null || b === null || Math.abs(a - b) <= ALIKE) return [];
      const values = { letters, left: { mm: a }, right: { mm: b }, difference: { mm: Math.abs(a - b) } };
      return [remark('doubt', code, atPoint(Math.max(left.index, right.index), column), values)];
    };
    return [
      ...differ('station', 'mirror-station'),
      ...differ('height', 'mirror-height'),
      ...differ('halfWidth', 'mirror-half-width'),
    ];
  });
}

function pairs(points: readonly PointRow[]): [Indexed, Indexed][] {
  const rows: Indexed[] = points.map((row, index) => ({ ...row, index }));
  const [left, right] = [rows.filter(({ side }) => side === 'L'), rows.filter(({ side }) => side === 'R')];
  return left.flatMap((one): [Indexed, Indexed][] => {
    const same = right.find(({ letter }) => letter === one.letter);
    if (same !== undefined) return [[one, same]];
    const at = (all: readonly Indexed[]) =>
      all.filter(({ station }) => station !== null && station === one.station);
    const [other] = at(right);
    return other !== undefined && at(right).length === 1 && at(left).length === 1 ? [[one, other]] : [];
  });
}

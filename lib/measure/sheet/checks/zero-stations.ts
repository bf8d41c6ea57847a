import { atPoint, remark, type Remark } from '../remark';
import type { PointRow } from '../rows';
import { sidesOf } from '../sides';

/**
 * Heights stand on a datum plane, which two zero stations in the center section carry, each side by itself. A sheet
 * of lengths alone needs none.
 */
export function checkZeroStations(points: readonly PointRow[]): Remark[] {
  const zeros = points.map((row, index) => ({ ...row, index })).filter(({ zero }) => zero);
  if (points.every(({ height }) => height === null) && zeros.length === 0) return [];
  const stations = [...new Set(zeros.flatMap(({ station }) => (station === null ? [] : [station])))];
  const letters = [...new Set(zeros.map(({ letter }) => letter))].join(', ');
  const found: Remark[] = [];
  const last = zeros.at(-1)?.index;
  if (stations.length !== 2)
    found.push(
      remark('fault', 'zero-count', last === undefined ? null : atPoint(last, 'zero'), {
        count: { count: stations.length },
        letters,
      }),
    );
  else found.push(...missingSides(points, zeros, stations));
  for (const { letter, section, index } of zeros)
    if (section !== 'center')
      found.push(remark('doubt', 'zero-section', atPoint(index, 'section'), { letter }));
  return found;
}

/** A side that has heights needs one at both zero stations. */
function missingSides(
  points: readonly PointRow[],
  zeros: readonly (PointRow & { index: number })[],
  stations: readonly number[],
): Remark[] {
  const has = (rows: readonly PointRow[], side: 'L' | 'R') =>
    rows.some((row) => row.height !== null && sidesOf(row.side).includes(side));
  return (['L', 'R'] as const).flatMap((side) =>
    stations.flatMap((station) => {
      const here = zeros.filter((row) => row.station === station);
      const [first] = here;
      if (
        first === undefined ||
        has(here, side) ||
        (!has(points, side) && has(points, 'R') === has(points, 'L'))
      )
        return [];
      const level = has(points, side) ? 'fault' : 'doubt';
      return [remark(level, 'zero-side', atPoint(first.index, 'zero'), { letter: first.letter, side })];
    }),
  );
}

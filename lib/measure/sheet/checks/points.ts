import { isPoint } from '@/lib/measure/dimension';
import { atPoint, remark, type Remark } from '../remark';
import type { PointRow } from '../rows';
import { sidesOf } from '../sides';

/** Each point by itself, and that none is there twice. */
export function checkPoints(points: readonly PointRow[]): Remark[] {
  const seen = new Map<string, number>();
  return points.flatMap((row, index) => {
    const { letter, side, station, height, centerline, tolerance } = row;
    const found: Remark[] = [];
    const fault = (code: Remark['code'], column: Parameters<typeof atPoint>[1], values = {}) =>
      found.push(remark('fault', code, atPoint(index, column), { letter, ...values }));
    if (letter === '') fault('letter-missing', 'letter');
    else if (!isPoint(letter)) fault('letter-wrong', 'letter');
    const first = sidesOf(side)
      .map((one) => seen.get(`${letter} ${one ?? ''}`))
      .find((one) => one !== undefined);
    if (letter !== '' && first !== undefined)
      fault('letter-twice', 'letter', { first: { count: first + 1 }, row: { count: index + 1 } });
    for (const one of sidesOf(side))
      if (!seen.has(`${letter} ${one ?? ''}`)) seen.set(`${letter} ${one ?? ''}`, index);
    if (station === null && (height !== null || centerline !== null)) fault('station-missing', 'station');
    if (side === 'center' && height !== null) fault('center-height', 'height');
    if (tolerance <= 0) fault('tolerance-zero', 'tolerance');
    return found;
  });
}

import type { DatumLine } from '@/lib/assess';
import type { Scale } from './scale';

/**
 * Where heights would read if only the datum were off, as a path: an error at a zero gauge shows at every other
 * station in proportion to its distance, with the sign turned round. Drawn as far as bars are, from `from` to `to`.
 * @returns '' where no part of it lies in the field.
 */
export function shiftLine(
  { front, rear }: DatumLine,
  scale: Scale,
  datum: number,
  { from, to }: { from: number; to: number },
): string {
  const start = scale.x(front.station);
  const slope = -(rear.error - front.error) / (scale.x(rear.station) - start);
  const shift = (x: number) => -front.error + slope * (x - start);
  const reaches = [scale.limit, -scale.limit].map((edge) => start + (edge + front.error) / slope);
  const flat = slope === 0 || !reaches.every(Number.isFinite);
  const first = flat ? from : Math.max(from, Math.min(...reaches));
  const last = flat ? to : Math.min(to, Math.max(...reaches));
  if (first >= last || (flat && Math.abs(front.error) > scale.limit)) return '';
  const point = (x: number) => `${x.toFixed(1)} ${(datum + scale.y(shift(x))).toFixed(1)}`;
  return `M${point(first)}L${point(last)}`;
}

import { lengthEnds } from './dimension';
import type { Dimension } from './types';

/** Letters that name a point on both sides: those whose heights are read left and right. */
export function sharedLetters(
  dimensions: Iterable<Pick<Dimension, 'quantity' | 'point' | 'side'>>,
): Set<string> {
  const left = new Set<string>();
  const right = new Set<string>();
  for (const { quantity, point, side } of dimensions) {
    if (quantity === 'height') (side === 'L' ? left : right).add(point);
  }
  return new Set([...left].filter((letter) => right.has(letter)));
}

/**
 * How many lengths of the vehicle one name and sheet value stand for: two where both ends are letters that both
 * sides share and no side is said (left and right, or both diagonals), else one.
 */
export function lengthsNamed(point: string, shared: ReadonlySet<string>): 1 | 2 {
  const ends = lengthEnds(point);
  if (ends === null || ends[0].point === ends[1].point) return 1;
  return ends.every((end) => end.side === null && shared.has(end.point)) ? 2 : 1;
}

/** True where a length may be a straight one or a diagonal, since an end's letter is shared and its side not said. */
export function mayBeDiagonal(point: string, shared: ReadonlySet<string>): boolean {
  const ends = lengthEnds(point);
  if (ends === null || ends[0].point === ends[1].point) return false;
  return ends.some((end) => end.side === null && shared.has(end.point));
}

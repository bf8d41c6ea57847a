import type { Dimension, Side } from './types';

type Identity = Pick<Dimension, 'quantity' | 'point' | 'side'>;

/** What tells two dimensions of a sheet apart: quantity, point and side. `height K L`, `length K-N`. */
export function dimensionKey({ quantity, point, side }: Identity): string {
  return side === null ? `${quantity} ${point}` : `${quantity} ${point} ${side}`;
}

/** A point of the sheet, with the side where it is stated. */
export interface LengthEnd {
  point: string;
  side: Side | null;
}

const END = /^([^\s.-]+)(?:\.([LR]))?$/u;

/** Both ends of a length, `K-N` or `K.L-N.R`; null where the text is not a length. */
export function lengthEnds(point: string): [LengthEnd, LengthEnd] | null {
  const parts = point.split('-');
  if (parts.length !== 2) return null;
  const ends = parts.map((part): LengthEnd | null => {
    const match = END.exec(part.trim());
    return match?.[1] === undefined
      ? null
      : { point: match[1], side: (match[2] as Side | undefined) ?? null };
  });
  const [a, b] = ends;
  return a && b ? [a, b] : null;
}

/** True for a single point of the sheet, `K`. */
export function isPoint(point: string): boolean {
  const match = END.exec(point);
  return match !== null && match[2] === undefined;
}

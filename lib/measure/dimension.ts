import type { Dimension, Side } from './types';

/** What the sheet calls a dimension: `height K L`, `length K-N`, `centerline K`. */
export function dimensionName({
  quantity,
  point,
  side,
}: Pick<Dimension, 'quantity' | 'point' | 'side'>): string {
  return side === null ? `${quantity} ${point}` : `${quantity} ${point} ${side}`;
}

/**
 * What tells two dimensions of a sheet apart: quantity, point and side, and for a length its sheet value too.
 * Where both sides of the vehicle share letters and a length does not say its sides, `K-N` is the name of two
 * lengths: the straight one (left or right) and the diagonal (either way); only the sheet value tells which.
 * @example dimensionKey({ quantity: 'length', point: 'K-N', side: null, nominal: 1452 }) // 'length K-N 1452'
 */
export function dimensionKey(dimension: Pick<Dimension, 'quantity' | 'point' | 'side' | 'nominal'>): string {
  const name = dimensionName(dimension);
  return dimension.quantity === 'length' ? `${name} ${dimension.nominal}` : name;
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

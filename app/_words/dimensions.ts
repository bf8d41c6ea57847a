import type { Dimension } from '@/lib/measure';

/** A dimension as it is said: `height K left`, `length K–N`. */
export function dimensionName({
  quantity,
  point,
  side,
}: Pick<Dimension, 'quantity' | 'point' | 'side'>): string {
  const name = `${quantity} ${point.replace('-', '–')}`;
  return side === null ? name : `${name} ${sideName(side)}`;
}

export function sideName(side: 'L' | 'R'): string {
  return side === 'L' ? 'left' : 'right';
}

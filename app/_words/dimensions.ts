import { words } from '@/app/_words/words';
import type { Dimension, Side } from '@/lib/measure';

/** A dimension as it is said: `height K left`, `length K–N`. */
export function dimensionName({
  quantity,
  point,
  side,
}: Pick<Dimension, 'quantity' | 'point' | 'side'>): string {
  const name = `${words('terms')(`quantities.${quantity}`)} ${point.replace('-', '–')}`;
  return side === null ? name : `${name} ${sideName(side)}`;
}

export const sideName = (side: Side): string => words('terms')(`sides.${side}`);

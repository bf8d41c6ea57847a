import type { Side } from '@/lib/measure/types';
import type { RowSide } from './rows';

/** The sides of the vehicle that one entry stands for; null is the centerline. */
export function sidesOf(side: RowSide): readonly (Side | null)[] {
  if (side === 'both') return ['L', 'R'];
  return side === 'center' ? [null] : [side];
}

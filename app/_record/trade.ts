import { sideName } from '@/app/_words/dimensions';
import { roundName } from '@/app/_words/jobs';
import type { Dimension, Stage } from '@/lib/measure';

/** A point as a table of its kind names it: `K left`, `K–N`. */
export function placeSaid({ point, side }: Pick<Dimension, 'point' | 'side'>): string {
  const name = point.replace('-', '–');
  return side === null ? name : `${name} ${sideName(side)}`;
}

/** A list as it is said; nothing is left out. */
export const listed = (names: readonly string[]): string => names.join('; ');

export const roundSaid = ({ stage, attempt }: { stage: Stage; attempt: number }): string =>
  roundName(stage, attempt);

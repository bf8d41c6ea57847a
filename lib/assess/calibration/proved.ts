import type { Cause } from '@/lib/measure/types';
import type { ForetoldHeight } from './foretold';

/** What was said of a height and what was proved; `round` is the same for heights of the same round. */
export type Foretold = Pick<ForetoldHeight, 'p' | 'proved'> & { round: string };

export type Proved = Foretold & { proved: Cause };

/** Those that the check did not leave open. */
export const provedOnly = (heights: readonly Foretold[]): Proved[] =>
  heights.filter((height): height is Proved => height.proved !== null);

export const roundsOf = (heights: readonly Foretold[]): number =>
  new Set(heights.map(({ round }) => round)).size;

import type { HabitTally } from '../tally';
import { type Alike, alikeOf } from './same-values';
import { type Middle, smoothMiddle } from './smooth-middle';

/** What takes long enough to be worked out once a hand instead of once a comparison. */
export interface Prepared {
  alike: Alike;
  middle: Middle | null;
}

export function prepare(all: ReadonlyMap<string, HabitTally>): Map<string, Prepared> {
  const shop = [...all.values()];
  return new Map(
    [...all].map(([name, tally]) => [
      name,
      { alike: alikeOf(tally, shop), middle: smoothMiddle(tally.near) },
    ]),
  );
}

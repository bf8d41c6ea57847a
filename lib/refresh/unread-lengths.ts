import type { UnreadLength } from '@/lib/assess';
import type { Dimension, Round } from '@/lib/measure';

/** The lengths of the round's sheet that were not read in it: candidates for the next check. */
export function unreadLengths(
  round: Round,
  sheets: ReadonlyMap<string, readonly Dimension[]>,
): UnreadLength[] {
  const sheet = round.sheet === null ? undefined : sheets.get(round.sheet);
  const observations = round.setups.flatMap((setup) => setup.observations);
  const read = new Set(observations.filter(isLength).map(({ point }) => point));
  return (sheet ?? []).filter((dimension) => isLength(dimension) && !read.has(dimension.point));
}

const isLength = ({ quantity }: Pick<Dimension, 'quantity'>) => quantity === 'length';

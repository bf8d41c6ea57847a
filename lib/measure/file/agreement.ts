import type { Draft } from './draft';

/** A line that does not say what most lines of its group say. */
export interface Disagreement<T> {
  odd: Draft;
  says: T;
  /** A line that says what most say, for the message. */
  usual: Draft;
  most: T;
  /** How many lines say so. */
  count: number;
}

/**
 * The lines that disagree with the most of their group; lines that say nothing (null) are not asked. Where two
 * answers are equally frequent, the one met first is taken for the right one.
 */
export function disagreements<T>(group: readonly Draft[], of: (draft: Draft) => T | null): Disagreement<T>[] {
  const votes = new Map<T, Draft[]>();
  for (const draft of group) {
    const says = of(draft);
    if (says === null) continue;
    const voters = votes.get(says);
    if (voters === undefined) votes.set(says, [draft]);
    else voters.push(draft);
  }
  if (votes.size < 2) return [];
  const ranked = [...votes].sort(([, a], [, b]) => b.length - a.length || lineOf(a) - lineOf(b));
  const [winner, ...others] = ranked;
  const usual = winner?.[1][0];
  if (winner === undefined || usual === undefined) return [];
  const [most, voters] = winner;
  return others.flatMap(([says, odd]) =>
    odd.map((draft) => ({ odd: draft, says, usual, most, count: voters.length })),
  );
}

const lineOf = (drafts: readonly Draft[]) => drafts[0]?.line ?? Infinity;

/** `line 4` or `line 4 and 12 others`, for the lines that agree. */
export function agreeing(
  { usual, count }: { usual: Draft; count: number },
  placeOf: (draft: Draft) => string,
): string {
  if (count === 1) return placeOf(usual);
  return `${placeOf(usual)} and ${count - 1} other${count === 2 ? '' : 's'}`;
}

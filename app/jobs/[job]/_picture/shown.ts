import { firstOf, roundAnchor, type Query } from '@/app/_words/address';
import { frozen, onceFor } from '@/lib/memory';
import type { Round } from '@/lib/measure';

/** Which rounds the picture shows, and how: beside each other, one laid over the other, or one alone. */
export interface Shown {
  choice: string;
  rounds: Round[];
  over: boolean;
}

export const BESIDE = 'beside';
export const OVER = 'over';

const anchorOf = ({ stage, attempt }: Round): string => roundAnchor(stage, attempt);

/** The last round before the repair and the last one after it, where there are both. */
function beforeAndAfter(rounds: readonly Round[]): Round[] | null {
  const [before, after] = (['before', 'after'] as const).map((stage) =>
    rounds.filter((round) => round.stage === stage).at(-1),
  );
  return before && after ? [before, after] : null;
}

/** Every choice that these rounds leave, in the order in which they are offered. */
export function choicesOf(rounds: readonly Round[]): string[] {
  const both = beforeAndAfter(rounds) === null ? [] : [BESIDE, OVER];
  return [...both, ...rounds.map(anchorOf)];
}

/** What is asked for by `?show=`; else before and after beside each other, or the last round; null without rounds. */
export function shownOf(rounds: readonly Round[], query: Query): Shown | null {
  const asked = firstOf(query, 'show');
  return shownBy(rounds, asked === undefined || !choicesOf(rounds).includes(asked) ? null : asked);
}

const shownBy = onceFor((rounds: readonly Round[], asked: string | null): Shown | null => {
  const both = beforeAndAfter(rounds);
  const one = rounds.find((round) => anchorOf(round) === asked);
  if (one !== undefined) return frozen({ choice: anchorOf(one), rounds: [one], over: false });
  if (both !== null)
    return frozen({ choice: asked === OVER ? OVER : BESIDE, rounds: both, over: asked === OVER });
  const last = rounds.at(-1);
  return last === undefined ? null : frozen({ choice: anchorOf(last), rounds: [last], over: false });
});

import type { Round } from '@/lib/measure/types';
import { centerlineAsHeights, sideways } from '../round/centerline';
import { judgeRound, ONE_BY_ONE } from '../cause/judge';
import type { Learned } from '../cause/learned';
import { groupsOf, hypothesisOf } from './hypotheses';
import type { RoundEvidence } from './types';
import { weighing } from './weighing';

/** Shown are at most so many hypotheses, and beyond the first two only those of at least this probability. */
const SHOWN = 4;
const WORTH_SHOWING = 0.02;

/**
 * What stands behind the verdicts of a round: the leading hypotheses about what is wrong, what each leads to
 * expect at every height, and which reading speaks for the first of them against the second.
 */
export function evidenceOf(round: Round, learned: Learned): RoundEvidence | { why: string } {
  // The pieces of what speaks for an explanation do not add up with the weight of others of its kind.
  const judged = judgeRound(round, learned, ONE_BY_ONE);
  if ('why' in judged) return judged;
  const groups = groupsOf(judged);
  const shown = groups
    .slice(0, SHOWN)
    .filter(({ probability }, index) => index < 2 || probability >= WORTH_SHOWING);
  const [first, second] = shown;
  return {
    hypotheses: shown.map((group) => hypothesisOf(judged, learned, group)),
    rest: Math.max(0, 1 - shown.reduce((sum, { probability }) => sum + probability, 0)),
    weighing: first && second ? weighing(judged, first, second) : [],
  };
}

/** The same for the centre pins of a round, each as the left side of a height; null where none was read or judged. */
export function centerlineEvidenceOf(round: Round, learned: Learned): RoundEvidence | null {
  const pins = centerlineAsHeights(round);
  const found = pins === null ? null : evidenceOf(pins, sideways(learned));
  return found === null || 'why' in found ? null : found;
}

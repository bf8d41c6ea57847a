import type { Round } from '@/lib/measure/types';
import { judgeRound } from '../cause/judge';
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
  const judged = judgeRound(round, learned);
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

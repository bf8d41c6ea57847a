/** What stands behind the verdicts of a round: hypotheses, what each leads to expect, what speaks for which. */
export { centerlineEvidenceOf, evidenceOf } from './evidence-of';
export type { Bar, Fault, Hypothesis, RoundEvidence, Weighed } from './types';
export {
  datumWords,
  faultWords,
  heightName,
  hypothesisWords,
  type Kind,
  leftOverWords,
  pieceName,
  times,
  weighingWords,
} from './words';

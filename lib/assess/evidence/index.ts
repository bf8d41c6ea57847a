/** What stands behind the verdicts of a round: hypotheses, what each leads to expect, what speaks for which. */
export { centerlineEvidenceOf, evidenceOf } from './evidence-of';
export type { Bar, Fault, Hypothesis, Kind, RoundEvidence, Weighed } from './types';

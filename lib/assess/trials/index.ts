/** Repeat trials: planned, run in a balanced random order, analysed, and compared before and after a training. */
export { analyseTrial, type PersonInTrial, type TrialAnalysis } from './analyse';
export { compareTrials, type Compared, type TrainingComparison } from './compare';
export { ownPart, type OwnPart } from './own-part';
export { planTrial, trialPower, type PlanOptions, type TrialPlan } from './plan';
export { runSheet, type RunLine, type RunSheetInput } from './run-sheet';
export type { Estimated, ExpectedScatter, TrialQuestion, TrialReading, TrialSize } from './types';

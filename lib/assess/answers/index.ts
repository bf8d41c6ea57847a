/** The shop's questions beyond the verdict on a round, answered from all its jobs: what the three users come for. */
export { habitSpan } from './habit-span';
export { handSpan, type HandFilter, type HandSpan, type MonthOfHands } from './hand-span';
export type { MissetCount } from './misset-counts';
export { JOB_SHARE_FORMAT, jobShare, type JobShare } from './job-share';
export {
  monthQuestion,
  questionsOfJob,
  type MonthDocuments,
  type MonthKind,
  type SpanChoices,
} from './month-sums';
export { ShopQuestions, type KnownAnswers, type SeldomChanged } from './shop-questions';
export type {
  Answers,
  HabitsAnswer,
  HandAnswer,
  Question,
  RatesAnswer,
  RiskAnswer,
  SignalsAnswer,
  WhatIfAnswer,
} from './types';

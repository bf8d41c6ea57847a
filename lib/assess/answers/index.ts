/** The shop's questions beyond the verdict on a round, answered from all its jobs: what the three users come for. */
export { habitSpan } from './habit-span';
export { handSpan, type HandFilter, type HandSpan, type MonthOfHands } from './hand-span';
export { changedHands } from './changed-hands';
export type { MissetCount } from './misset-counts';
export { JOB_SHARE_FORMAT, jobShare, type JobShare } from './job-share';
export { atWork, type AtWork } from './at-work';
export {
  habitMonth,
  handMonth,
  monthQuestion,
  monthsOfJob,
  MonthSums,
  type DocumentOf,
  type HabitMonth,
  type HandMonth,
  type MonthDocuments,
  type MonthKind,
  type SpanChoices,
} from './month-sums';
export {
  missetsPiecesOf,
  pieceQuestion,
  withBands,
  type HandPiece,
  type HandsIndex,
  type PiecedQuestion,
  type PieceIndex,
} from './questions';
export { ShopQuestions, type Documents, type IsKept, type SeldomChanged } from './shop-questions';
export { Standing, type MonthOfShop, type YearChange } from './standing';
export type { WorkMonth } from './work-month';
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

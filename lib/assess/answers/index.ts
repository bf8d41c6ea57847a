/** The shop's questions beyond the verdict on a round, answered from all its jobs: what the three users come for. */
export { habitSpan } from './habit-span';
export { handSpan, type HandFilter, type HandSpan, type MonthOfHands } from './hand-span';
export type { MissetCount } from './misset-counts';
export { monthQuestion, type MonthDocuments, type MonthKind, type SpanChoices } from './month-sums';
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

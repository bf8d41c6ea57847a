/** The shop's questions beyond the verdict on a round, answered from all its jobs: what the three users come for. */
export { ShopQuestions } from './shop-questions';
export type {
  Answers,
  HabitsAnswer,
  HandAnswer,
  Question,
  RatesAnswer,
  RiskAnswer,
  WhatIfAnswer,
} from './types';

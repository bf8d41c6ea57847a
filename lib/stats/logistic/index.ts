export { logisticRegression } from './logistic-regression';
export type { LogisticCoefficient, LogisticData, LogisticFit } from './types';

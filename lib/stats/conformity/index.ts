export { conformity, type Conformity, type ConformityQuestion } from './conformity';
export { decisionRisks, type DecisionQuestion, type DecisionRisks } from './decision-risks';
export type { Tolerance } from './tolerance';

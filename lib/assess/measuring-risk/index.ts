/** What measuring error does to the rate: expected wrong calls of jobs, risks of a dimension, guard bands. */
export { bodyPrior } from './body-prior';
export {
  dimensionRisks,
  guardBand,
  handRisks,
  type DimensionQuestion,
  type DimensionRisks,
  type GuardBand,
  type HandRisks,
} from './decisions';
export { finalJob } from './final-job';
export { missetSd, missetsOf } from './missets';
export { jobRisk } from './job-risk';
export { riskOf, shopRisk } from './shop-risk';
export type {
  BodyPrior,
  ExpectedCount,
  FinalDimension,
  FinalJob,
  JobRisk,
  Misset,
  SharedError,
  ShopRisk,
} from './types';

export { chanceUpperLimitBelow, sdUpperFactor, type SdPlan } from './precision-of-sd';
export {
  readingsNeeded,
  type MeanPlan,
  type MeanQuestion,
  type RepeatabilityQuestion,
} from './readings-needed';
export { tTestPower, type TTestDesign } from './t-test-power';

export { crossedTrial } from './crossed-trial';
export type {
  ByMethod,
  Categories,
  CrossedComponents,
  CrossedIntervals,
  CrossedTrial,
  CrossedTrialInput,
  PooledTrial,
  Table,
  TableLine,
  Variances,
} from './types';

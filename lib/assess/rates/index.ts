/** Right first time, told fairly: by whom, where, when and with what, with intervals, shrinkage, funnel and adjustment. */
export { fairRates } from './fair-rates';
export { funnelCurves, type FunnelPoint } from './funnel-curves';
export { hardnessModel, type HardnessModel } from './hardness-model';
export { IMPACT_ZONES, jobStart, MOST_TOLERANCES, type ImpactZone, type JobStart } from './job-start';
export { rateJob, type RateJob } from './rate-job';
export {
  RATE_GROUPINGS,
  type AdjustedRate,
  type FairRate,
  type FairRates,
  type FunnelCurve,
  type FunnelPlace,
  type RateGrouping,
} from './types';

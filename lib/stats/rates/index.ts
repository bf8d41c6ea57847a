export { betaBinomial, type BetaBinomial, type UnitRate } from './beta-binomial';
export { funnelLimits, type FunnelLimits } from './funnel-limits';
export { overdispersedLimits, overdispersion, type Overdispersion } from './overdispersion';

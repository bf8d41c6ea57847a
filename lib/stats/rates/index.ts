export { betaBinomial, type BetaBinomial, type UnitRate } from './beta-binomial';
export { funnelLimits, type FunnelLimits } from './funnel-limits';
export { overdispersedLimits, overdispersion, type Overdispersion } from './overdispersion';
export { observedOverExpected, type ObservedOverExpected } from './observed-over-expected';
export { poissonBinomial, type PoissonBinomial } from './poisson-binomial';
export { betaBinomialRow, widenedFunnelLimits } from './widened-funnel-limits';

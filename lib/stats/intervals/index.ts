export { binomialInterval, type BinomialIntervalOptions, type BinomialMethod } from './binomial-interval';
export type { Limits } from './interval';
export { meanInterval, tInterval, type MeanInterval } from './mean-interval';
export { sdInterval, sdUpperLimit } from './sd-interval';
export { rateDifference } from './rate-difference';
export { sdRatio, type SdRatio } from './sd-ratio';

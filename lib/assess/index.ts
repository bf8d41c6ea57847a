/** The shop's questions, answered from its jobs. Plain objects in and out; see each room's docstrings. */
export { assessShop } from './assess-shop';
export type { ShopAssessment } from './shop-assessment';
export type { Learned } from './cause/learned';
export {
  gaugeBias,
  gaugeFigures,
  settingOf,
  type ShopBand,
  shopBand,
  technicianBias,
  technicianFigures,
} from './figures';
export * from './differences';
export { learn, type LearnOptions } from './learn';
export { measuredIn, MeasuredSums, type Measured } from './measured';
export { recordedDimensions } from './recorded';
export * from './repeatability';
export * from './right-first-time';
export * from './round';
export * from './types';
export * from './uncertainty';

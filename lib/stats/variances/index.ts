export { varianceRoot, type VarianceGroup, type VarianceRoot } from './variance-root';
export { excessSpread } from './excess-spread';

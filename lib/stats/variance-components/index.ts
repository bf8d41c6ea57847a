export type { Effects } from './effects';
export {
  fitCollapsedVarianceComponents,
  type CollapsedComponents,
  type CollapsedComponentsInput,
} from './fit-collapsed-variance-components';
export { fitVarianceComponents } from './fit-variance-components';
export type {
  Component,
  Estimate,
  Label,
  LevelEffect,
  SdWithLimits,
  VarianceComponents,
  VarianceComponentsInput,
} from './types';

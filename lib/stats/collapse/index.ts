export { collapse, type Collapsed } from './collapse';
export { collapseByCode, type CollapsedColumns } from './collapse-by-code';
export { mergeCollapsed, type CollapsedInput } from './merge-collapsed';
export { addWeighted, NO_WEIGHT, type Weighted, type WeightedSum } from './add-weighted';

export { changePoint, type ChangePoint } from './change-point';
export {
  meanChangePoint,
  rateChangePoint,
  weightedChangePoint,
  type GroupedChange,
  type Weighted,
} from './grouped-change-point';

export { changePoint, type ChangePoint } from './change-point';
export {
  meanChangePoint,
  rateChangePoint,
  weightedChangePoint,
  type GroupedChange,
} from './grouped-change-point';

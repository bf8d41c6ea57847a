export { changePoint, type ChangePoint } from './change-point';
export {
  meanChangePoint,
  rateChangePoint,
  scatterChangePoint,
  type GroupedChange,
} from './grouped-change-point';

export { changePoint, type ChangePoint } from './change-point';
export { meanChangePoint, rateChangePoint, type GroupedChange } from './grouped-change-point';

export { changePoint, type ChangePoint } from './change-point';

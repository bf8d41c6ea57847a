export { repeatability } from './pooled';
export { robustRepeatability, type RobustRepeatability } from './robust';

export { repeatability, repeatabilityByTechnician } from './pooled';
export { robustRepeatability, type RobustRepeatability } from './robust';

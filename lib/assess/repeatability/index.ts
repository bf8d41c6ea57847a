export { repeatability, repeatabilityByTechnician } from './pooled';

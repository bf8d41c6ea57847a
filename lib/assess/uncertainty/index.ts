export { setupDimensionKey, standardUncertainties } from './standard-uncertainties';

export { slope, type Slope } from './slope';

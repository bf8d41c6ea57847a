export { algorithmA, type RobustMean } from './algorithm-a';
export { algorithmS, limitFactors, type LimitFactors, type RobustSd } from './algorithm-s';

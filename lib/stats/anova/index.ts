export { oneWayAnova, type AnovaLine, type OneWayAnova } from './one-way-anova';
export { pooledStandardDeviation, type PooledSd } from './pooled-standard-deviation';

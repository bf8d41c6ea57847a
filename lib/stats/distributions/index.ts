/** Distribution functions, both tails and their quantiles. The only folder that reaches the library behind them. */
export { betaDensity, betaCdf, betaQuantile, betaUpper, betaUpperQuantile } from './beta';
export { binomialAtLeast, binomialCdf, binomialProbability } from './binomial';
export {
  chiSquareDensity,
  chiSquareCdf,
  chiSquareQuantile,
  chiSquareUpper,
  chiSquareUpperQuantile,
} from './chi-square';
export { logGamma } from './log-gamma';
export { fDensity, fCdf, fQuantile, fUpper, fUpperQuantile } from './fisher-f';
export {
  normalBetween,
  normalDensity,
  normalCdf,
  normalQuantile,
  normalUpper,
  normalUpperQuantile,
} from './normal';
export { normalCdfByTable } from './normal-table';
export { noncentralTUpper } from './noncentral-t';
export { tCdf, tQuantile, tUpper, tUpperQuantile } from './student-t';

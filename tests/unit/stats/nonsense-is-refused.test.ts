import { describe, expect, it } from 'vitest';
import * as stats from '@/lib/stats';

/** Every call must throw a RangeError whose message is a sentence. */
const refused: [string, () => unknown][] = [
  ['binomialInterval, more successes than trials', () => stats.binomialInterval(5, 4)],
  ['binomialInterval, broken count', () => stats.binomialInterval(1.5, 4)],
  ['binomialInterval, NaN', () => stats.binomialInterval(NaN, 4)],
  ['binomialInterval, negative', () => stats.binomialInterval(-1, 4)],
  ['binomialInterval, level 1', () => stats.binomialInterval(1, 4, { level: 1 })],
  ['sdInterval, negative sd', () => stats.sdInterval(-1, 3)],
  ['sdInterval, NaN df', () => stats.sdInterval(1, NaN)],
  ['meanInterval, NaN', () => stats.meanInterval([1, NaN])],
  ['tInterval, negative standard error', () => stats.tInterval(0, -1, 3)],
  ['betaBinomial, more successes than trials', () => stats.betaBinomial([{ x: 3, n: 2 }])],
  ['betaBinomial, NaN', () => stats.betaBinomial([{ x: NaN, n: 2 }])],
  ['funnelLimits, rate above 1', () => stats.funnelLimits(1.2, 10)],
  ['funnelLimits, broken n', () => stats.funnelLimits(0.5, 2.5)],
  ['widenedFunnelLimits, a spread that rates cannot have', () => stats.widenedFunnelLimits(0.8, 10, 0.4)],
  ['poissonBinomial, chance above 1', () => stats.poissonBinomial([0.2, 1.2])],
  ['observedOverExpected, more successes than trials', () => stats.observedOverExpected(2, [0.5])],
  ['rateDifference, broken count', () => stats.rateDifference({ x: 0.5, n: 2 }, { x: 1, n: 2 })],
  ['sdRatio, negative', () => stats.sdRatio({ sd: -1, df: 2 }, { sd: 1, df: 2 })],
  ['slope, unequal lengths', () => stats.slope([1, 2], [1])],
  ['rateChangePoint, more successes than trials', () => stats.rateChangePoint([{ x: 3, n: 2 }])],
  ['meanChangePoint, level 1', () => stats.meanChangePoint([], { level: 1 })],
  ['overdispersion, half of both tails', () => stats.overdispersion([], 0.5, { winsorise: 0.5 })],
  ['conformity, negative uncertainty', () => stats.conformity({ value: 0, uncertainty: -1, upper: 1 })],
  ['conformity, NaN value', () => stats.conformity({ value: NaN, uncertainty: 1, upper: 1 })],
  ['conformity, crossed limits', () => stats.conformity({ value: 0, uncertainty: 1, lower: 1, upper: -1 })],
  ['conformity, NaN limit', () => stats.conformity({ value: 0, uncertainty: 1, lower: NaN, upper: 1 })],
  [
    'decisionRisks, negative sd',
    () => stats.decisionRisks({ processMean: 0, processSd: -1, uncertainty: 1, lower: -1, upper: 1 }),
  ],
  [
    'decisionRisks, NaN guard',
    () =>
      stats.decisionRisks({ processMean: 0, processSd: 1, uncertainty: 1, lower: -1, upper: 1, guard: NaN }),
  ],
  ['controlConstants of one', () => stats.controlConstants(1)],
  ['controlConstants, broken', () => stats.controlConstants(2.5)],
  ['ewma, sd zero', () => stats.ewma([1], { center: 0, sd: 0 })],
  ['ewma, weight above 1', () => stats.ewma([1], { center: 0, sd: 1, lambda: 1.5 })],
  ['ewma, NaN value', () => stats.ewma([NaN], { center: 0, sd: 1 })],
  ['cusum, head start above h', () => stats.cusum([1], { center: 0, sd: 1, h: 4, headStart: 5 })],
  ['cusum, negative k', () => stats.cusum([1], { center: 0, sd: 1, k: -1, h: 4 })],
  ['cusumLimitFor, a run length that k alone exceeds', () => stats.cusumLimitFor(3.5, 370)],
  ['averageRunLength, L zero', () => stats.averageRunLength({ chart: 'individuals', L: 0 })],
  ['averageRunLength, NaN shift', () => stats.averageRunLength({ chart: 'individuals', L: 3 }, NaN)],
  ['individuals, infinite', () => stats.individuals([1, Infinity])],
  ['grubbs, NaN', () => stats.grubbs([1, 2, NaN])],
  ['grubbsCritical of two', () => stats.grubbsCritical(2)],
  ['grubbsCritical, level 0', () => stats.grubbsCritical(5, 0)],
  ['cochran, negative', () => stats.cochran([1, -1], 3)],
  ['cochran, one value each', () => stats.cochran([1, 2], 1)],
  ['mandel, unequal lengths', () => stats.mandel({ means: [1, 2], sds: [1], n: 3 })],
  ['algorithmA, NaN', () => stats.algorithmA([1, NaN])],
  ['algorithmS, negative', () => stats.algorithmS([1, -1], 2)],
  ['algorithmS, df zero', () => stats.algorithmS([1, 2], 0)],
  ['limitFactors, beyond the table', () => stats.limitFactors(11, 'table')],
  ['digitPreference, one digit', () => stats.digitPreference([3])],
  ['digitPreference, negative', () => stats.digitPreference([3, -1])],
  ['readingsNeeded, no difference', () => stats.readingsNeeded({ question: 'bias', difference: 0, sd: 1 })],
  [
    'readingsNeeded, power 1',
    () => stats.readingsNeeded({ question: 'bias', difference: 1, sd: 1, power: 1 }),
  ],
  ['readingsNeeded, ratio 1', () => stats.readingsNeeded({ question: 'repeatability', ratio: 1 })],
  ['benjaminiHochberg, p above 1', () => stats.benjaminiHochberg([0.5, 1.5])],
  [
    'logisticRegression, unequal lengths',
    () => stats.logisticRegression({ successes: [1, 0], covariates: { a: [1] } }),
  ],
  [
    'logisticRegression, NaN covariate',
    () => stats.logisticRegression({ successes: [1, 0], covariates: { a: [1, NaN] } }),
  ],
  ['logisticRegression, 2 of 1', () => stats.logisticRegression({ successes: [2, 0], covariates: {} })],
  ['changePoint, NaN', () => stats.changePoint([1, 2, NaN, 3])],
  ['tUpper, df zero', () => stats.tUpper(1, 0)],
  ['chiSquareQuantile, p above 1', () => stats.chiSquareQuantile(1.1, 3)],
  ['betaQuantile, shape zero', () => stats.betaQuantile(0.5, 0, 1)],
  ['fUpperQuantile, NaN', () => stats.fUpperQuantile(NaN, 1, 1)],
];

describe('nonsense is refused with a sentence', () => {
  it.each(refused)('%s', (_, call) => {
    expect(call).toThrow(RangeError);
    expect(call).toThrow(/^[A-Z].+\.$/);
  });
});

import { describe, expect, it } from 'vitest';
import * as dist from '@/lib/stats/distributions';
import { distributionCases } from './distribution-cases';
import { expectRelative } from './closeness';

const quantiles: Record<string, (...args: [number, number, number]) => number> = {
  normal_upper: dist.normalUpperQuantile,
  t_upper: dist.tUpperQuantile,
  chi_lower: dist.chiSquareQuantile,
  chi_upper: dist.chiSquareUpperQuantile,
  f_lower: dist.fQuantile,
  f_upper: dist.fUpperQuantile,
  beta_lower: dist.betaQuantile,
  beta_upper: dist.betaUpperQuantile,
};
const tails: Record<string, (...args: [number, number, number]) => number> = {
  normal_upper: dist.normalUpper,
  t_upper: dist.tUpper,
  chi_lower: dist.chiSquareCdf,
  chi_upper: dist.chiSquareUpper,
  f_lower: dist.fCdf,
  f_upper: dist.fUpper,
  beta_lower: dist.betaCdf,
  beta_upper: dist.betaUpper,
};

describe('distribution functions against scipy and R, tails from 0.4 to 1e-12', () => {
  for (const name of Object.keys(quantiles)) {
    const cases = distributionCases.filter(({ quantile }) => quantile === name);

    it(`${name}: ${cases.length} quantiles to 1e-10`, () => {
      expect(cases.length).toBeGreaterThan(3);
      for (const { args, value } of cases) {
        const [p, a = NaN, b = NaN] = args;
        expectRelative(quantiles[name]?.(p, a, b), value, 1e-10, `${name} ${args.join(' ')}`);
      }
    });

    it(`${name}: the tail beyond each quantile gives its probability back`, () => {
      for (const { args, value } of cases) {
        const [p, a = NaN, b = NaN] = args;
        expectRelative(tails[name]?.(value, a, b), p, 1e-10, `${name} ${args.join(' ')}`);
      }
    });
  }

  it('normal tail far out: R pnorm(c(10, 20, 38), lower.tail = FALSE)', () => {
    expectRelative(dist.normalUpper(10), 7.6198530241605261e-24, 1e-12);
    expectRelative(dist.normalUpper(20), 2.7536241186062337e-89, 1e-12);
    expectRelative(dist.normalUpper(38), 2.8854283600896e-316, 1e-6);
  });

  it('binomial tails in 10,000 trials: closed forms and R pbinom', () => {
    expectRelative(dist.binomialCdf(0, 10_000, 0.001), 0.999 ** 10_000, 1e-11);
    expectRelative(dist.binomialAtLeast(10_000, 10_000, 0.999), 0.999 ** 10_000, 1e-11);
    expectRelative(dist.binomialProbability(2, 4, 0.5), 6 / 16, 1e-14);
  });
});

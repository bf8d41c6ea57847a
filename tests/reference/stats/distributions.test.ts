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

  it('normal quantiles far out: mpmath 1.3 with 40 digits, the root of ln(erfc(z/√2)/2) = ln q', () => {
    expectRelative(dist.normalUpperQuantile(1e-17), 8.4937932241095980744, 1e-14);
    expectRelative(dist.normalUpperQuantile(1e-20), 9.2623400897984075737, 1e-14);
    expectRelative(dist.normalUpperQuantile(1e-50), 14.933337534788488981, 1e-14);
    expectRelative(dist.normalUpperQuantile(1e-100), 21.273453560965324295, 1e-14);
    expectRelative(dist.normalQuantile(1e-300), -37.047096299361199237, 1e-14);
  });

  it('binomial tails in 10,000 trials: closed forms and R pbinom', () => {
    expectRelative(dist.binomialCdf(0, 10_000, 0.001), 0.999 ** 10_000, 1e-11);
    expectRelative(dist.binomialAtLeast(10_000, 10_000, 0.999), 0.999 ** 10_000, 1e-11);
    expectRelative(dist.binomialProbability(2, 4, 0.5), 6 / 16, 1e-14);
  });
});

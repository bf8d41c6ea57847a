import { describe, expect, it } from 'vitest';
import { betaBinomial, funnelLimits, overdispersion } from '@/lib/stats';
import shrinkage from '../data/07-empirical-bayes/beta-binomial.json';
import funnel from '../data/07-empirical-bayes/funnel.json';
import { expectAbsolute, expectRelative } from './closeness';

/** `alpha` … `posterior_high_95` exist only where there is more spread than binomial. */
interface ShrinkageCase {
  id: string;
  boundary: boolean;
  x: number[];
  n: number[];
  alpha: number | null;
  beta: number | null;
  posterior_mean: number[];
  posterior_low_95?: number[];
  posterior_high_95?: number[];
}
const cases: ShrinkageCase[] = shrinkage.cases;

describe('betaBinomial against R (nlminb and Newton)', () => {
  it.each(cases)('$id', (expected) => {
    const units = expected.x.map((x, i) => ({ x, n: expected.n[i] ?? NaN }));
    const fit = betaBinomial(units);
    expected.posterior_mean.forEach((mean, i) => expectAbsolute(fit.units[i]?.mean, mean, 1e-7));
    if (expected.boundary) {
      expect(fit).toMatchObject({ alpha: null, beta: null });
      expect(fit.why).toMatch(/no more than chance/);
      return;
    }
    // batting-1970 has a nearly flat likelihood.
    const { alpha, beta, posterior_low_95: low = [], posterior_high_95: high = [] } = expected;
    expect(low.length).toBe(units.length);
    const tolerance = expected.id === 'batting-1970' ? 1e-3 : 1e-5;
    expectRelative(fit.alpha, alpha ?? NaN, tolerance);
    expectRelative(fit.beta, beta ?? NaN, tolerance);
    low.forEach((limit, i) => expectAbsolute(fit.units[i]?.low, limit, 1e-6));
    high.forEach((limit, i) => expectAbsolute(fit.units[i]?.high, limit, 1e-6));
  });
});

describe('funnelLimits against R qbinom and pbinom (Spiegelhalter 2005)', () => {
  it.each(funnel.cases)('n = $n', (expected) => {
    for (const [level, key] of [
      [0.95, '95'],
      [0.998, '99.8'],
    ] as const) {
      const limits = funnelLimits(funnel.p0, expected.n, level);
      expectAbsolute(limits.low, expected[`lower_${key}`].interpolated, 1e-10);
      expectAbsolute(limits.high, expected[`upper_${key}`].interpolated, 1e-10);
      expect(limits).toMatchObject({
        lowCount: expected[`lower_${key}`].r,
        highCount: expected[`upper_${key}`].r,
        lowAlarm: expected[`alarm_${key}`].x_low_at_most,
        highAlarm: expected[`alarm_${key}`].x_high_at_least,
      });
    }
  });
});

describe('overdispersion against the formulas of Spiegelhalter (2005) written out in Python', () => {
  const units = cases[0]?.x.map((x, i) => ({ x, n: cases[0]?.n[i] ?? NaN })) ?? [];

  it('twenty units about 0.85, pulled in and not', () => {
    const pulled = overdispersion(units, 0.85);
    expectRelative(pulled.ratio, 2.443347736664072, 1e-12);
    expectRelative(pulled.tau, 0.0818848778213063, 1e-12);
    const plain = overdispersion(units, 0.85, { winsorise: 0 });
    expectRelative(plain.ratio, 2.8256934954804196, 1e-12);
    expectRelative(plain.tau, 0.09177072601746829, 1e-12);
  });
});

import { describe, expect, it } from 'vitest';
import { binomialInterval, meanInterval, sdInterval, sdUpperLimit } from '@/lib/stats';
import binomial from '../data/04-intervals-limits/binomial.json';
import chiSquare from '../data/04-intervals-limits/chisq-sd.json';
import { expectRelative } from './closeness';

describe('sdInterval against R qchisq', () => {
  it.each(chiSquare.cases)('df $df at $level', ({ df, level, low, high, one_sided_upper }) => {
    const interval = sdInterval(1, df, level);
    expectRelative(interval.low, low, 1e-10);
    expectRelative(interval.high, high, 1e-10);
    expectRelative(sdUpperLimit(1, df, level), one_sided_upper, 1e-10);
  });
});

describe('binomialInterval against R binom.test, prop.test and qbeta', () => {
  it.each(binomial.cases)('$x of $n at $level', ({ x, n, level, ...expected }) => {
    const methods = {
      wilson: expected.wilson,
      jeffreys: expected.jeffreys,
      'clopper-pearson': expected.clopper_pearson,
    };
    for (const method of ['wilson', 'jeffreys', 'clopper-pearson'] as const) {
      const interval = binomialInterval(x, n, { method, level });
      expectRelative(interval.low, methods[method].low, 1e-9, method);
      expectRelative(interval.high, methods[method].high, 1e-9, method);
    }
  });
});

describe('meanInterval', () => {
  it('sleep of ten patients: R t.test(extra ~ 1, data = sleep, subset = group == 1)', () => {
    // R 4.2.2: t.test(sleep$extra[sleep$group == 1])
    const { mean, low, high } = meanInterval([0.7, -1.6, -0.2, -1.2, -0.1, 3.4, 3.7, 0.8, 0.0, 2.0]);
    expectRelative(mean, 0.75, 1e-14);
    expectRelative(low, -0.52978041352623217, 1e-12);
    expectRelative(high, 2.0297804135262321, 1e-12);
  });

  it('keeps its digits behind a thousand million common units', () => {
    const { sd } = meanInterval([1e9 + 0.25, 1e9 + 0.5, 1e9 + 0.75]);
    expect(sd).toBe(0.25);
  });
});

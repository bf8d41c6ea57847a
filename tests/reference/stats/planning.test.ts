import { describe, expect, it } from 'vitest';
import { chanceUpperLimitBelow, readingsNeeded, sdUpperFactor, tTestPower } from '@/lib/stats';
import { noncentralTUpper } from '@/lib/stats/distributions';
import power from '../data/10-power/power.json';
import { expectAbsolute, expectRelative } from './closeness';

describe('readingsNeeded against R power.t.test', () => {
  it.each(power.t_test)(
    '$type, sd $sd, power $power, strict $strict',
    ({ delta, sd, type, strict, ...expected }) => {
      const plan = readingsNeeded({
        question: type === 'one.sample' ? 'bias' : 'difference',
        difference: delta,
        sd,
        power: expected.power,
        level: 1 - expected.sig_level,
        strict,
      });
      expect(plan.n).toBe(expected.n);
      expectRelative(plan.exact, expected.n_exact, 1e-8);
      expectAbsolute(plan.power, expected.power_at_n, 1e-8);
      expectAbsolute(plan.powerWithOneFewer, expected.power_at_n_minus_1, 1e-8);
    },
  );
});

describe('precision of an sd against R qchisq and pchisq', () => {
  it.each(power.sd_upper)('df $df at $level', ({ df, level, upper_factor, probability_upper_below }) => {
    expectRelative(sdUpperFactor(df, level), upper_factor, 1e-10);
    for (const { c, p } of probability_upper_below)
      expectAbsolute(chanceUpperLimitBelow(c, df, level), p, 1e-8);
  });

  it.each(power.sd_smallest_df)('upper limit below $c sd at $level', ({ level, c, ...expected }) => {
    const plan = readingsNeeded({ question: 'repeatability', ratio: c, level });
    expect(plan).toMatchObject({ df: expected.smallest_df, n: expected.smallest_df + 1, setups: 1 });
    expectRelative(plan.factor, expected.factor_at_df, 1e-10);
    expectRelative(plan.factorWithOneFewer, expected.factor_at_df_minus_1, 1e-10);
  });
});

describe('noncentral t', () => {
  it('R pt(q, df, ncp, lower.tail = FALSE)', () => {
    for (const [q, df, ncp, expected] of [
      [2, 3, 1, 0.256370131592354],
      [12.706, 1, 2, 0.125225486552218],
      [1.9, 10000, 3, 0.864322661709924],
      [2.5, 1.5, 0.5, 0.156987767023693],
      [-1, 8, -2, 0.158440339848551],
      [4, 30, 0, 0.000190922818041878],
    ] as const) {
      expectAbsolute(noncentralTUpper(q, df, ncp), expected, 1e-10, `${q} ${df} ${ncp}`);
    }
  });

  it('strict power at no effect is the level', () => {
    expectAbsolute(tTestPower(5, { effect: 0, samples: 1, alpha: 0.05, strict: true }), 0.05, 1e-11);
  });
});

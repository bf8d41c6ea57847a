import { describe, expect, it } from 'vitest';
import { fQuantile, fUpper, meanInterval } from '@/lib/stats';
import gum from '../data/03-gum-conformity/gum-h5.json';
import { expectAbsolute, expectRelative } from './closeness';

/** Volts of a standard on ten days, five readings a day: does the day matter? JCGM 100:2008 (GUM), H.5. */
describe('GUM H.5', () => {
  const { day_mean: means, day_sd: sds, J, K, computed, published } = gum;
  const days = meanInterval(means);
  const between = K * (days.sd ?? NaN) ** 2;
  const within = sds.reduce((sum, sd) => sum + sd * sd, 0) / J;

  it('means and scatter', () => {
    expectRelative(days.mean, computed.grand_mean, 1e-12);
    expectRelative(days.sd, computed.s_of_day_means, 1e-12);
    expectRelative(Math.sqrt(within), computed.s_b, 1e-12);
    expectRelative((days.sd ?? NaN) / Math.sqrt(J), computed.u_of_mean, 1e-12);
    expect(days.df).toBe(computed.u_of_mean_df);
    expectAbsolute(days.mean, (published.grand_mean_V - 10) * 1e6, 0.5);
    expectAbsolute(days.sd, published.s_of_day_means_uV, 0.5);
    expectAbsolute(Math.sqrt(within), published.s_b_uV, 0.5);
  });

  it('F, its probability and its quantiles', () => {
    const f = between / within;
    expectRelative(f, computed.F, 1e-12);
    expectRelative(fUpper(f, J - 1, J * (K - 1)), computed.p_value, 1e-12);
    expectRelative(fQuantile(0.95, J - 1, J * (K - 1)), computed['F_0.95'], 1e-12);
    expectRelative(fQuantile(0.975, J - 1, J * (K - 1)), computed['F_0.975'], 1e-12);
    expectAbsolute(fQuantile(0.95, J - 1, J * (K - 1)), published['F_0.95_9_40'], 5e-3);
    expectAbsolute(fQuantile(0.975, J - 1, J * (K - 1)), published['F_0.975_9_40'], 5e-3);
  });
});

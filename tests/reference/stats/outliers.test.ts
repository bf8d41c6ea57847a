import { describe, expect, it } from 'vitest';
import {
  cochran,
  cochranCritical,
  grubbs,
  grubbsCritical,
  mandel,
  mandelHCritical,
  mandelKCritical,
} from '@/lib/stats';
import cochranTable from '../data/04-intervals-limits/cochran.json';
import grubbsTable from '../data/04-intervals-limits/grubbs.json';
import mandelTable from '../data/04-intervals-limits/mandel.json';
import { expectAbsolute, expectRelative } from './closeness';

describe('critical values against R qt and qf', () => {
  it.each(grubbsTable.cases)('Grubbs n = $n at $alpha', ({ n, alpha, two_sided, one_sided }) => {
    expectRelative(grubbsCritical(n, alpha), two_sided, 1e-9);
    expectRelative(grubbsCritical(n, alpha, 'upper'), one_sided, 1e-9);
    expectRelative(grubbsCritical(n, alpha, 'lower'), one_sided, 1e-9);
  });

  it.each(cochranTable.cases)('Cochran p = $p at $alpha', ({ p, alpha, n, value }) => {
    n.forEach((each, i) => expectRelative(cochranCritical(p, each, alpha), value[i] ?? NaN, 1e-9));
  });

  it.each(mandelTable.cases)('Mandel p = $p at $alpha', ({ p, alpha, h, n, k }) => {
    expectRelative(mandelHCritical(p, alpha), h, 1e-9);
    n.forEach((each, i) => expectRelative(mandelKCritical(p, each, alpha), k[i] ?? NaN, 1e-9));
  });

  it('are the tables of ISO 5725-2 (from memory) to one unit of the last digit', () => {
    for (const { args, value, digits } of grubbsTable.iso_5725_2_from_memory) {
      expectAbsolute(grubbsCritical(args.n, args.alpha), value, 1.5 * 10 ** -digits);
    }
    for (const { args, value, digits } of cochranTable.iso_5725_2_from_memory) {
      expectAbsolute(cochranCritical(args.p, args.n, args.alpha), value, 1.5 * 10 ** -digits);
    }
    for (const { args, value, digits } of mandelTable.iso_5725_2_from_memory) {
      expectAbsolute(mandelHCritical(args.p, args.alpha), value, 1.5 * 10 ** -digits);
    }
  });
});

describe('tests on data', () => {
  it('Grubbs: mass spectrometer readings of the NIST e-Handbook, 1.3.5.17.1 (from memory): G = 2.4687, critical 2.032', () => {
    const values = [199.31, 199.53, 200.19, 200.82, 201.92, 201.95, 202.18, 245.57];
    const test = grubbs(values);
    expectAbsolute(test.statistic, 2.4687, 5e-4);
    expectAbsolute(grubbsCritical(8, 0.05, 'upper'), 2.032, 5e-4);
    expect(test).toMatchObject({ index: 7, outlier: true });
  });

  it('p equals the level where the statistic equals its critical value', () => {
    const values = [0, 0.1, -0.2, 0.3, 0.15, 4];
    const { statistic, p } = grubbs(values);
    expectRelative(grubbsCritical(6, p ?? NaN), statistic ?? NaN, 1e-9);
    const sds = [1, 1.2, 0.8, 3];
    const spread = cochran(sds, 3);
    expectRelative(cochranCritical(4, 3, spread.p ?? NaN), spread.statistic ?? NaN, 1e-9);
  });

  it('Mandel: h has sd 1 and k has mean square 1', () => {
    const { h, k } = mandel({ means: [10.1, 10.3, 9.9, 10.6], sds: [0.1, 0.2, 0.1, 0.4], n: 3 });
    expectRelative(
      h?.reduce((sum, value) => sum + value * value, 0),
      3,
      1e-12,
    );
    expectRelative(
      k?.reduce((sum, value) => sum + value * value, 0),
      4,
      1e-12,
    );
  });
});

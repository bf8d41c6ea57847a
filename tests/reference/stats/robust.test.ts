import { describe, expect, it } from 'vitest';
import { algorithmA, algorithmS, limitFactors } from '@/lib/stats';
import robust from '../data/09-robust/results.json';
import { expectRelative } from './closeness';

describe('algorithmA against R (ISO 13528, C.3.1)', () => {
  it.each(robust.algorithm_A)('$id', ({ id, x, result }) => {
    const found = algorithmA(x);
    expectRelative(found.mean, result.mean, 1e-9);
    if (id === 'mad-zero') {
      expect(found).toMatchObject({ sd: null, iterations: 0 });
      expect(found.why).toMatch(/no measure of agreement/);
      return;
    }
    expectRelative(found.sd, result.sd, 1e-9);
    expect(found).toMatchObject({
      pulledLow: result.winsorised_low,
      pulledHigh: result.winsorised_high,
      why: null,
    });
  });
});

describe('algorithmS against R (ISO 13528, C.4)', () => {
  it.each(robust.algorithm_S)('$id', ({ w, df, with_table_constants, with_formula_constants }) => {
    for (const [constants, expected] of [
      ['table', with_table_constants],
      ['formula', with_formula_constants],
    ] as const) {
      const found = algorithmS(w, df, { constants });
      expectRelative(found.eta, expected.eta, 1e-10);
      expectRelative(found.xi, expected.xi, 1e-10);
      expectRelative(found.sd, expected.w, 1e-9);
      expect(found.pulled).toBe(expected.winsorised);
    }
  });

  it.each(robust.table_check)('limit factors for $df df', ({ df, eta, xi, eta_table, xi_table }) => {
    expectRelative(limitFactors(df).eta, eta, 1e-10);
    expectRelative(limitFactors(df).xi, xi, 1e-10);
    expect(limitFactors(df, 'table')).toEqual({ eta: eta_table, xi: xi_table });
  });
});

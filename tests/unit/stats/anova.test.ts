import { describe, expect, it } from 'vitest';
import { oneWayAnova, pooledStandardDeviation } from '@/lib/stats/anova';

describe('oneWayAnova says why there is no ratio', () => {
  it('with one group', () => {
    const found = oneWayAnova([[1, 2, 3]]);
    expect(found).toMatchObject({
      f: null,
      p: null,
      between: { df: 0, ms: null },
      within: { ss: 2, df: 2, ms: 1 },
    });
    expect(found.why).toContain('fewer than two groups');
  });

  it('without repeats', () => {
    const found = oneWayAnova([[1], [2]]);
    expect(found).toMatchObject({ f: null, residualSd: null, within: { df: 0, ms: null } });
    expect(found.why).toContain('No group holds two readings');
  });

  it('without scatter within groups', () => {
    const found = oneWayAnova([
      [1, 1],
      [2, 2],
    ]);
    expect(found).toMatchObject({ f: null, p: null, rSquared: 1, residualSd: 0 });
    expect(found.why).toContain('equal');
  });

  it('without any readings', () => {
    expect(oneWayAnova([])).toMatchObject({ f: null, rSquared: null, residualSd: null });
  });

  it('and refuses readings that are not finite', () => {
    expect(() => oneWayAnova([[1, 2], [NaN]])).toThrow(RangeError);
  });
});

describe('pooledStandardDeviation', () => {
  it('pools squares over degrees of freedom: {1,3}, {2,4,6} give √((2 + 8) / 3)', () => {
    const { sd, df } = pooledStandardDeviation([[1, 3], [2, 4, 6], [9]]);
    expect(df).toBe(3);
    expect(sd).toBeCloseTo(Math.sqrt(10 / 3), 14);
  });

  it('has the chi-square limits', () => {
    // df 10, sd 1: NIST/SEMATECH e-Handbook 1.3.6.7.4, chi-square 3.247 and 20.483 to three decimals.
    const ten = Array.from({ length: 10 }, () => [0, Math.SQRT2]);
    const { sd, low, high } = pooledStandardDeviation(ten);
    expect(sd).toBeCloseTo(1, 14);
    expect(low).toBeCloseTo(Math.sqrt(10 / 20.483), 4);
    expect(high).toBeCloseTo(Math.sqrt(10 / 3.247), 4);
  });

  it('says why there is none, and that equal repeats set no upper limit', () => {
    expect(pooledStandardDeviation([[1], [2], []])).toMatchObject({ sd: null, df: 0, low: null, high: null });
    expect(pooledStandardDeviation([[1, 1]])).toMatchObject({ sd: 0, df: 1, low: 0, high: null });
    expect(pooledStandardDeviation([[1, 1]]).why).toContain('equal');
  });

  it('refuses readings that are not finite and levels outside 0 and 1', () => {
    expect(() => pooledStandardDeviation([[1, Infinity]])).toThrow(RangeError);
    expect(() => pooledStandardDeviation([[1, 2]], 0)).toThrow(RangeError);
  });
});

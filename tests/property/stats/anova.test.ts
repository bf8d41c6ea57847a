import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { oneWayAnova, pooledStandardDeviation } from '@/lib/stats/anova';

const groups = fc.array(
  fc.array(
    fc.integer({ min: -500, max: 500 }).map((tenths) => tenths / 8),
    { minLength: 1, maxLength: 6 },
  ),
  { minLength: 2, maxLength: 6 },
);

const close = (actual: number | null, expected: number | null) => {
  if (expected === null) expect(actual).toBeNull();
  else
    expect(Math.abs((actual ?? NaN) - expected)).toBeLessThanOrEqual(1e-10 * Math.max(1, Math.abs(expected)));
};

describe('oneWayAnova', () => {
  it('does not see a constant, the order of groups and readings, or an empty group', () => {
    fc.assert(
      fc.property(groups, (data) => {
        const plain = oneWayAnova(data);
        const other = oneWayAnova([
          [],
          ...[...data].reverse().map((group) => [...group].reverse().map((v) => v + 2 ** 30)),
        ]);
        expect(other.between.df).toBe(plain.between.df);
        expect(other.within.df).toBe(plain.within.df);
        close(other.between.ss, plain.between.ss);
        close(other.within.ss, plain.within.ss);
        close(other.f, plain.f);
        close(other.p, plain.p);
      }),
      { seed: 1 },
    );
  });

  it('splits the total sum of squares', () => {
    fc.assert(
      fc.property(groups, (data) => {
        const { between, within } = oneWayAnova(data);
        const all = oneWayAnova([data.flat(), []]);
        close(between.ss + within.ss, all.within.ss);
        expect(between.df + within.df).toBe(all.within.df);
      }),
      { seed: 2 },
    );
  });
});

describe('pooledStandardDeviation', () => {
  it('has the variance within groups of the analysis of variance, and its degrees of freedom', () => {
    fc.assert(
      fc.property(groups, (data) => {
        const { sd, df } = pooledStandardDeviation(data);
        const { within, residualSd } = oneWayAnova(data);
        expect(df).toBe(within.df);
        close(sd, residualSd);
      }),
      { seed: 3 },
    );
  });
});

import { describe, expect, it } from 'vitest';
import { excessSpread, varianceRoot } from '@/lib/stats';
import { Random } from '@/tests/simulation/random';
import { expectRelative } from './closeness';

describe('varianceRoot', () => {
  /** E (χ²/ν)^⅓, and its square over its variance: mpmath 1.3, the density of χ² integrated with 30 digits. */
  const INTEGRATED = [
    [1, 0.80238057487533, 3.44200583397],
    [2, 0.89297951156925, 7.57040319439],
    [5, 0.95584908781711, 20.7436215711],
    [29, 0.99233867517203, 128.541293145],
    [400, 0.99944444501635, 1798.00296542],
  ] as const;

  it.each(INTEGRATED)(
    'of %d degrees of freedom has the mean and the sd of the cube root of χ²',
    (df, mean, weight) => {
      const found = varianceRoot({ df, ss: 8 * df });
      expectRelative(found?.root, 2 / mean, 1e-9);
      expectRelative(found?.weight, weight, 1e-8);
    },
  );

  it('is near Wilson and Hilferty’s own 1 − 2/(9ν) and 9ν/2 where the degrees of freedom are many', () => {
    const found = varianceRoot({ df: 100, ss: 100 });
    expectRelative(found?.root, 1 / (1 - 2 / 900), 1e-5);
    expectRelative(found?.weight, 450, 0.01);
  });

  it('is not there without a degree of freedom, and refuses what cannot be', () => {
    expect(varianceRoot({ df: 0, ss: 0 })).toBeNull();
    expect(() => varianceRoot({ df: -1, ss: 1 })).toThrow(RangeError);
    expect(() => varianceRoot({ df: 1, ss: NaN })).toThrow(RangeError);
  });
});

describe('excessSpread', () => {
  /** Variances of groups of 30 values. */
  const groups = (count: number, value: () => number) =>
    Array.from({ length: count }, () => {
      const values = Array.from({ length: 30 }, value);
      const mean = values.reduce((sum, one) => sum + one, 0) / 30;
      return { df: 29, ss: values.reduce((sum, one) => sum + (one - mean) ** 2, 0) };
    });

  it('is about 1 of normal values', () => {
    const random = new Random(3);
    const found = excessSpread(groups(2_000, () => random.normal()));
    expect(found).toBeLessThan(1.1);
  });

  it('is about (κ − 1)/2 of values with long tails, as Box (1953) has it for large groups', () => {
    const random = new Random(4);
    // Half of one scatter, half of another: κ = 3 (1 + 3.5²) / 2 / ((1 + 3.5) / 2)² for variances 1 and 3.5.
    const [a, b] = [1, 3.5];
    const kurtosis = (3 * (a * a + b * b)) / 2 / ((a + b) / 2) ** 2;
    const found = excessSpread(groups(4_000, () => random.normal(0, Math.sqrt(random.chance(0.5) ? a : b))));
    expectRelative(found, (kurtosis - 1) / 2, 0.1);
  });

  it('leaves out what changed at a cut, and does not depend on the unit', () => {
    const random = new Random(5);
    const [before, after] = [groups(300, () => random.normal()), groups(300, () => random.normal(0, 3))];
    const all = [...before, ...after];
    expect(excessSpread(all)).toBeGreaterThan(10);
    expect(excessSpread(all, [300])).toBeLessThan(1.2);
    const inches = all.map(({ df, ss }) => ({ df, ss: ss / 25.4 ** 2 }));
    expectRelative(excessSpread(inches), excessSpread(all), 1e-12);
  });

  it('is 1 where there is nothing to tell it from', () => {
    expect(excessSpread([])).toBe(1);
    expect(excessSpread([{ df: 4, ss: 2 }])).toBe(1);
    expect(
      excessSpread([
        { df: 4, ss: 0 },
        { df: 4, ss: 0 },
      ]),
    ).toBe(1);
    expect(
      excessSpread([
        { df: 0, ss: 0 },
        { df: 0, ss: 0 },
      ]),
    ).toBe(1);
  });
});

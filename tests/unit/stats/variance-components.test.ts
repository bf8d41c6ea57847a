import { describe, expect, it } from 'vitest';
import { fitCollapsedVarianceComponents, fitVarianceComponents } from '@/lib/stats/variance-components';

const values = [3.1, 2.9, 4.2, 4.0, 5.1, 5.3, 2.2, 2.5];
const setup = ['a', 'a', 'b', 'b', 'c', 'c', 'd', 'd'];
const technician = ['x', 'x', 'y', 'y', 'x', 'x', 'y', 'y'];

describe('fitVarianceComponents refuses', () => {
  const refuse = (input: Parameters<typeof fitVarianceComponents>[0], message: RegExp) => {
    expect(() => fitVarianceComponents(input)).toThrow(RangeError);
    expect(() => fitVarianceComponents(input)).toThrow(message);
  };

  it('values that are not finite', () => {
    refuse({ values: [1, NaN, 2], random: { setup: ['a', 'a', 'b'] } }, /number 2 is NaN/);
  });

  it('a factor with too few labels, by name', () => {
    refuse({ values, random: { setup: setup.slice(1) } }, /"setup" has 7 labels for 8 readings/);
  });

  it('a label that is no label', () => {
    refuse({ values: [1, 2], random: { setup: ['a', NaN] } }, /"setup".*number 2 has NaN/);
  });

  it('a level outside 0 and 1', () => {
    refuse({ values, random: { setup }, level: 1 }, /level/);
  });

  it('a factor that is both random and fixed', () => {
    refuse({ values, random: { setup }, fixed: { setup } }, /"setup" is both/);
  });

  it('two random factors that split the readings in the same way, by name', () => {
    const again = setup.map((name) => `other ${name}`);
    refuse({ values, random: { setup, again } }, /"setup" and "again" are perfectly confounded/);
    refuse(
      { values, random: { technician, hand: technician.map((t) => (t === 'x' ? 2 : 1)) } },
      /"technician" and "hand"/,
    );
  });

  it('a random factor with a level for every reading', () => {
    refuse({ values, random: { reading: values.map((_, i) => i) } }, /"reading" and the residual/);
  });

  it('a random factor that a fixed one determines', () => {
    refuse({ values, random: { technician }, fixed: { setup } }, /"technician" and fixed factor "setup"/);
  });

  it('a fixed factor that another determines', () => {
    refuse(
      {
        values: [...values, 1],
        random: { other: [1, 2, 3, 1, 2, 3, 1, 2, 3] },
        fixed: { setup: [...setup, 'd'], technician: [...technician, 'y'] },
      },
      /Fixed factors "setup" and "technician"/,
    );
  });

  it('fixed factors whose levels are only partly connected', () => {
    // The last level of a occurs with the last level of b alone, and that with no other.
    const a = ['p', 'p', 'q', 'q', 'r', 'r', 'p', 'q'];
    const b = ['s', 't', 's', 't', 'u', 'u', 's', 't'];
    refuse(
      { values, random: { other: [1, 2, 3, 1, 2, 3, 1, 2] }, fixed: { a, b } },
      /Fixed factors "a", "b"/,
    );
  });
});

describe('a small design that leaves variances open', () => {
  it('is refused by the names of those variances: a 2 × 2 Latin square', () => {
    const square = { a: [1, 1, 2, 2], b: [1, 2, 1, 2], c: [1, 2, 2, 1] };
    expect(() => fitVarianceComponents({ values: [1, 2, 4, 3], random: square })).toThrow(
      /"a", "b", "c", the residual are perfectly confounded/,
    );
  });

  it('is fitted where a repeat of it opens them', () => {
    const twice = { a: [1, 1, 2, 2, 1], b: [1, 2, 1, 2, 1], c: [1, 2, 2, 1, 1] };
    const found = fitVarianceComponents({ values: [1, 2, 4, 3, 1.2], random: twice });
    expect(found.residual.sd).toBeGreaterThan(0);
  });
});

describe('fitVarianceComponents says why', () => {
  it('one level shows no spread, and the others are estimated without it', () => {
    const found = fitVarianceComponents({ values, random: { setup, shop: setup.map(() => 'only') } });
    const alone = fitVarianceComponents({ values, random: { setup } });
    expect(found.components[1]).toMatchObject({ sd: null, low: null, high: null });
    expect(found.components[1]?.why).toContain('"shop" has one level');
    expect(found.components[0]).toEqual(alone.components[0]);
    expect(found.criterion).toBe(alone.criterion);
  });

  it('one reading shows no scatter', () => {
    const found = fitVarianceComponents({ values: [4.5], random: { setup: ['a'] } });
    expect(found.intercept).toEqual({ estimate: 4.5, se: null });
    expect(found.residual).toMatchObject({ sd: null, low: null, high: null });
    expect(found.why).toContain('One reading');
  });

  it('no readings', () => {
    const found = fitVarianceComponents({ values: [], random: { setup: [] } });
    expect(found.criterion).toBeNull();
    expect(found.why).toContain('no readings');
  });

  it('equal readings have scatter that is finer than they show', () => {
    const found = fitVarianceComponents({ values: setup.map(() => 7), random: { setup, technician } });
    expect(found.intercept.estimate).toBe(7);
    expect(found.residual).toMatchObject({ sd: 0, low: 0, high: null });
    expect(found.components.map(({ sd }) => sd)).toEqual([0, 0]);
    expect(found.criterion).toBeNull();
  });

  it('readings that repeat exactly leave no residual, and the rest is estimated', () => {
    const means = [3, 4.25, 5.5, 2.25];
    const found = fitVarianceComponents({ values: means.flatMap((m) => [m, m]), random: { setup } });
    expect(found.residual).toMatchObject({ sd: 0, low: 0, high: null });
    expect(found.residual.why).toContain('exactly');
    expect(found.criterion).toBeNull();
    // The sd of the setups is then the sample sd of their values.
    const mean = means.reduce((a, b) => a + b) / 4;
    const sd = Math.sqrt(means.reduce((sum, m) => sum + (m - mean) ** 2, 0) / 3);
    expect(found.components[0]?.sd).toBeCloseTo(sd, 6);
  });
});

describe('fitVarianceComponents', () => {
  it('without random factors gives the mean and the sample sd with its chi-square-like limits', () => {
    const found = fitVarianceComponents({ values, random: {} });
    const mean = values.reduce((a, b) => a + b) / 8;
    const sd = Math.sqrt(values.reduce((sum, v) => sum + (v - mean) ** 2, 0) / 7);
    expect(found.intercept.estimate).toBeCloseTo(mean, 12);
    expect(found.intercept.se).toBeCloseTo(sd / Math.sqrt(8), 12);
    expect(found.residual.sd).toBeCloseTo(sd, 10);
  });

  it('of a balanced one-way layout has the ANOVA estimates', () => {
    // Setup means 3, 4.1, 5.2, 2.35; within: 0.02 + 0.02 + 0.02 + 0.045 = 0.105 on 4 df.
    const found = fitVarianceComponents({ values, random: { setup } });
    const within = 0.105 / 4;
    const means = [3, 4.1, 5.2, 2.35];
    const grand = means.reduce((a, b) => a + b) / 4;
    const between = (2 * means.reduce((sum, m) => sum + (m - grand) ** 2, 0)) / 3;
    expect((found.residual.sd ?? NaN) ** 2).toBeCloseTo(within, 10);
    expect((found.components[0]?.sd ?? NaN) ** 2).toBeCloseTo((between - within) / 2, 9);
  });

  it('takes 1 and "1" for one level and leaves limits out where none are asked for', () => {
    const mixed = fitVarianceComponents({
      values,
      random: { hand: [1, '1', 2, '2', 1, 1, 2, 2] },
      intervals: 'none',
    });
    const plain = fitVarianceComponents({ values, random: { hand: technician }, intervals: 'none' });
    expect(mixed.components[0]?.sd).toBe(plain.components[0]?.sd);
    expect(mixed.components[0]).toMatchObject({ low: null, high: null, why: null });
    expect(mixed.effects.hand?.map(({ level }) => level)).toEqual([1, 2]);
  });
});

describe('fitCollapsedVarianceComponents refuses', () => {
  const good = { n: [2, 2, 3], mean: [1, 2, 3], ss: [0.1, 0.2, 0.1], random: {} };

  it('counts below 1, means that are not finite, negative sums of squares, codes that are no codes', () => {
    expect(() => fitCollapsedVarianceComponents({ ...good, n: [2, 0, 3] })).toThrow(/setup 2 has 0/);
    expect(() => fitCollapsedVarianceComponents({ ...good, mean: [1, NaN, 3] })).toThrow(/setup 2 is NaN/);
    expect(() => fitCollapsedVarianceComponents({ ...good, ss: [0.1, -1, 0] })).toThrow(/setup 2 is -1/);
    expect(() => fitCollapsedVarianceComponents({ ...good, ss: [0.1] })).toThrow(/same length/);
    expect(() => fitCollapsedVarianceComponents({ ...good, random: { gauge: [0, 1.5, 1] } })).toThrow(
      /"gauge".*1.5/,
    );
    expect(() => fitCollapsedVarianceComponents({ ...good, random: { setup: [0, 1, 1] } })).toThrow(/two/i);
  });

  it('setups of one reading each, unless the setup is left out', () => {
    const single = {
      n: [1, 1, 1, 1],
      mean: [1, 2, 4, 3],
      ss: [0, 0, 0, 0],
      random: { technician: [0, 0, 1, 1] },
    };
    expect(() => fitCollapsedVarianceComponents(single)).toThrow(/"setup" and the residual/);
    const found = fitCollapsedVarianceComponents({ ...single, setup: null });
    expect(found.components.map(({ name }) => name)).toEqual(['technician']);
    expect(found.residual.sd).toBeGreaterThan(0);
  });
});

import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { collapse, collapseByCode, mergeCollapsed } from '@/lib/stats/collapse';

const reading = fc.integer({ min: -50_000, max: 50_000 }).map((tenths) => tenths / 10);
const group = fc.array(reading, { minLength: 1, maxLength: 30 });
const offset = fc.constantFrom(0, 1, 1e3, 1e6, -1e9);

const near = (actual: number, expected: number, unit: number) => {
  expect(Math.abs(actual - expected)).toBeLessThanOrEqual(1e-12 * Math.max(Math.abs(expected), unit));
};

describe('two collapsed groups', () => {
  it('merged are the collapsed union to 1e-12, whatever constant the readings carry', () => {
    fc.assert(
      fc.property(group, group, offset, (a, b, constant) => {
        const [one, other] = [a, b].map((values) => values.map((value) => value + constant));
        const merged = mergeCollapsed(collapse(one ?? []), collapse(other ?? []));
        const union = collapse([...(one ?? []), ...(other ?? [])]);
        expect(merged.n).toBe(union.n);
        near(merged.mean, union.mean, 0);
        // Readings of 0.1 resolution: the sum of squares of one step is the unit below which digits mean nothing.
        near(merged.ss, union.ss, 0.01);
      }),
      { seed: 3, numRuns: 300 },
    );
  });

  it('are the same merged either way round, and an empty one adds nothing', () => {
    fc.assert(
      fc.property(group, group, (a, b) => {
        const [one, other] = [collapse(a), collapse(b)];
        const [forth, back] = [mergeCollapsed(one, other), mergeCollapsed(other, one)];
        near(back.mean, forth.mean, 1e-3);
        near(back.ss, forth.ss, 0.01);
        expect(mergeCollapsed(one, collapse([]))).toEqual(one);
        expect(mergeCollapsed(collapse([]), one)).toEqual(one);
      }),
      { seed: 4 },
    );
  });

  it('keep their digits through a thousand merges of a file split reading by reading', () => {
    const values = Array.from({ length: 1000 }, (_, i) => 1e6 + ((i * 37) % 101) / 10);
    const merged = values.map((value) => collapse([value])).reduce(mergeCollapsed);
    const union = collapse(values);
    near(merged.mean, union.mean, 0);
    near(merged.ss, union.ss, 0);
  });
});

describe('collapse', () => {
  it('does not depend on the order of the readings', () => {
    fc.assert(
      fc.property(group, offset, (values, constant) => {
        const shifted = values.map((value) => value + constant);
        const [forth, back] = [collapse(shifted), collapse([...shifted].reverse())];
        near(back.mean, forth.mean, 0.01);
        near(back.ss, forth.ss, 0.01);
      }),
      { seed: 5 },
    );
  });

  it('is exact where the answer is: 1e9 + {4, 7, 13, 16} has mean 1e9 + 10 and ss 90', () => {
    const found = collapse([4, 7, 13, 16].map((value) => 1e9 + value));
    expect(found).toEqual({ n: 4, mean: 1e9 + 10, rest: 0, ss: 90 });
  });

  it('of nothing is nothing, and of one reading has no scatter', () => {
    expect(collapse([])).toEqual({ n: 0, mean: 0, rest: 0, ss: 0 });
    expect(collapse([3.7])).toEqual({ n: 1, mean: 3.7, rest: 0, ss: 0 });
    expect(() => collapse([1, Infinity])).toThrow(/number 2 is Infinity/);
  });
});

describe('collapseByCode', () => {
  it('is collapse of every group', () => {
    fc.assert(
      fc.property(
        fc.array(fc.tuple(reading, fc.nat({ max: 6 })), { maxLength: 60 }),
        offset,
        (readings, constant) => {
          const values = readings.map(([value]) => value + constant);
          const columns = collapseByCode(
            Float64Array.from(values),
            Int32Array.from(readings, ([, code]) => code),
            7,
          );
          for (let g = 0; g < 7; g++) {
            const alone = collapse(values.filter((_, i) => readings[i]?.[1] === g));
            expect(columns.n[g]).toBe(alone.n);
            near(columns.mean[g] ?? NaN, alone.mean, 0);
            near(columns.ss[g] ?? NaN, alone.ss, 0.01);
          }
        },
      ),
      { seed: 6 },
    );
  });
});

import { describe, expect, it } from 'vitest';
import { mean, sampleStandardDeviation } from 'simple-statistics';
import { randomAt } from '@/seed/random';

const many = (draw: () => number) => Array.from({ length: 20_000 }, draw);

describe('randomAt', () => {
  it('gives the same stream at the same path, and others at others', () => {
    const first = (...path: [number, ...number[]]) => randomAt(...path).between(0, 1);
    expect(first(7, 1, 2)).toBe(first(7, 1, 2));
    const paths = new Set([first(7), first(8), first(7, 1), first(7, 2), first(7, 1, 2), first(7, 2, 1)]);
    expect(paths.size).toBe(6);
  });

  it('starts streams that are uniform across neighbouring paths', () => {
    const starts = Array.from({ length: 20_000 }, (_, index) => randomAt(4101, index).between(0, 1));
    expect(Math.abs(mean(starts) - 0.5)).toBeLessThan(0.01);
    expect(Math.abs(sampleStandardDeviation(starts) - Math.sqrt(1 / 12))).toBeLessThan(0.005);
  });

  it('draws normal values with the sd asked for', () => {
    const random = randomAt(1);
    const values = many(() => random.normal(2));
    expect(Math.abs(mean(values))).toBeLessThan(0.06);
    expect(Math.abs(sampleStandardDeviation(values) - 2)).toBeLessThan(0.05);
    expect(Math.abs(values.filter((v) => Math.abs(v) > 3.92).length / values.length - 0.05)).toBeLessThan(
      0.006,
    );
  });

  it('draws by weight, whole numbers with both ends, and shuffles without loss', () => {
    const random = randomAt(2);
    const weighted = many(() => random.weighted([[1, 3] as const, [0, 1] as const]));
    expect(Math.abs(mean(weighted) - 0.75)).toBeLessThan(0.015);
    expect(new Set(many(() => random.whole(2, 4)))).toEqual(new Set([2, 3, 4]));
    expect(random.shuffled([1, 2, 3, 4, 5]).sort()).toEqual([1, 2, 3, 4, 5]);
  });

  it('refuses to choose from nothing', () => {
    expect(() => randomAt(3).pick([])).toThrow('Nothing to choose from');
    expect(() => randomAt(3).weighted([])).toThrow('Nothing to choose from');
  });
});

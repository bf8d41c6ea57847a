import { describe, expect, it } from 'vitest';
import { beyondChance, type Estimated } from '@/lib/assess';

/** A figure whose interval is ±1.96 standard errors of 0.1 wide. */
const figure = (key: string, value: number, se = 0.1): Estimated => ({
  key,
  value,
  low: value - 1.959963985 * se,
  high: value + 1.959963985 * se,
});

const scatter = (key: string, sd: number, relative: number): Estimated => ({
  key,
  value: sd,
  low: sd * Math.exp(-1.959963985 * relative),
  high: sd * Math.exp(1.959963985 * relative),
});

describe('differences beyond chance', () => {
  it('names the one figure that lies apart, beside the mean of the others', () => {
    // By hand: 1 against the mean 0 of three; spread √(0.01 + 0.03/9) = 0.1155; z = 8.66. For each of the others
    // 0 against 1/3: z = 2.89, p = 0.0039, named too: an apart one pulls the mean that the rest is held against.
    const found = beyondChance([figure('B', 0), figure('A', 1), figure('C', 0), figure('D', 0)], 'bias');
    expect(found.find(({ key }) => key === 'A')).toEqual({ key: 'A', side: 'above', value: 1, others: 0 });
  });

  it('adjusts for how many are compared', () => {
    // By hand: of two figures z = 0.29/√0.02 = 2.05 for either, p = 0.040: named. Among twelve, of which the other ten
    // lie between them, the same kind of distance has p near 0.04 and an adjusted p of more than 0.05.
    expect(beyondChance([figure('A', 0), figure('B', 0.29)], 'bias').map(({ key }) => key)).toEqual([
      'A',
      'B',
    ]);
    const many = Array.from({ length: 11 }, (_, index) => figure(String(index), 0));
    expect(beyondChance([...many, figure('X', 0.214)], 'bias')).toEqual([]);
    expect(beyondChance([...many, figure('X', 0.4)], 'bias').map(({ key }) => key)).toEqual(['X']);
  });

  it('compares scatter by ratios: a change of unit changes nothing', () => {
    const sds = [scatter('A', 0.4, 0.05), scatter('B', 0.7, 0.05), scatter('C', 0.5, 0.3)];
    const keys = (factor: number) =>
      beyondChance(
        sds.map(({ key, value, low, high }) => ({
          key,
          value: (value ?? 0) * factor,
          low: (low ?? 0) * factor,
          high: (high ?? 0) * factor,
        })),
        'scatter',
      ).map(({ key, side }) => `${key} ${side}`);
    expect(keys(1)).toEqual(['A below', 'B above']);
    expect(keys(25.4)).toEqual(keys(1));
  });

  it('leaves out what has no interval, and compares nothing with a single figure', () => {
    const none = { key: 'N', value: null, low: null, high: null };
    expect(beyondChance([none, figure('A', 5)], 'bias')).toEqual([]);
    expect(beyondChance([], 'scatter')).toEqual([]);
    expect(beyondChance([none, figure('A', 0), figure('B', 5)], 'bias').map(({ key }) => key)).toEqual([
      'A',
      'B',
    ]);
  });
});

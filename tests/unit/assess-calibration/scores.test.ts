import { describe, expect, it } from 'vitest';
import {
  brierByMonth,
  brierScore,
  calibrationError,
  calledHeights,
  type Foretold,
  reliability,
} from '@/lib/assess/calibration';
import type { Cause } from '@/lib/measure/types';

const said = (p: Partial<Record<Cause, number>>, proved: Cause | null, round = 'r'): Foretold => ({
  p: { neither: 0, gauge: 0, body: 0, both: 0, ...p },
  proved,
  round,
});

const many = (count: number, p: Partial<Record<Cause, number>>, proved: Cause | null): Foretold[] =>
  Array.from({ length: count }, (_, i) => said(p, proved, `${JSON.stringify(p)} ${String(proved)} ${i}`));

describe('reliability', () => {
  const heights = [
    ...many(8, { gauge: 0.85, body: 0.15 }, 'gauge'),
    ...many(2, { gauge: 0.85, body: 0.15 }, 'body'),
    ...many(3, { gauge: 0.82, body: 0.18 }, null),
    ...many(1, { gauge: 1 }, 'gauge'),
  ];

  it('counts what was said in tenths and how many proved so, with Wilson limits', () => {
    const bin = reliability(heights, 'gauge')[8];
    expect(bin).toMatchObject({
      low: 0.8,
      high: 0.9,
      heights: 10,
      rounds: 10,
      proved: 8,
      open: 3,
      share: 0.8,
    });
    expect(bin?.said).toBeCloseTo(0.85, 12);
    // R 4.2: prop.test(8, 10, correct = FALSE)$conf.int
    expect(bin?.interval.low).toBeCloseTo(0.4901625, 6);
    expect(bin?.interval.high).toBeCloseTo(0.9433178, 6);
  });

  it('puts certainty into the last tenth, and leaves tenths without a height empty', () => {
    const bins = reliability(heights, 'gauge');
    expect(bins[9]).toMatchObject({ heights: 1, proved: 1 });
    expect(bins[3]).toMatchObject({
      heights: 0,
      said: null,
      share: null,
      interval: { low: null, high: null },
    });
  });

  it('has an error that is the mean distance of said from proved', () => {
    // Ten heights are 0.05 apart, one is not apart at all.
    expect(calibrationError(reliability(heights, 'gauge'))).toBeCloseTo((10 * 0.05) / 11, 12);
    expect(calibrationError(reliability([], 'gauge'))).toBeNull();
  });
});

describe('the Brier score', () => {
  it('is 0 for certainty that proves right, 2 for certainty that proves wrong', () => {
    expect(brierScore([said({ gauge: 1 }, 'gauge')]).score).toBe(0);
    expect(brierScore([said({ gauge: 1 }, 'body')]).score).toBe(2);
    expect(brierScore([said({ gauge: 1 }, 'body')], 'gauge').score).toBe(1);
  });

  it('is worked by hand: 0.7, 0.2, 0.1 and the first proves so', () => {
    const one = brierScore([said({ gauge: 0.7, body: 0.2, neither: 0.1 }, 'gauge')]);
    expect(one.score).toBeCloseTo(0.3 ** 2 + 0.2 ** 2 + 0.1 ** 2, 12);
    expect(one.ifRight).toBeCloseTo(0.7 * 0.3 + 0.2 * 0.8 + 0.1 * 0.9, 12);
    expect(one.ofShares).toBe(0);
  });

  it('has no interval from few rounds, and says so', () => {
    expect(brierScore(many(9, { gauge: 0.9, body: 0.1 }, 'gauge'))).toMatchObject({
      low: null,
      high: null,
      why: 'Fewer than 10 rounds: too few for an interval.',
    });
    expect(brierScore([])).toMatchObject({ score: null, why: 'No height has been proved yet.' });
    expect(brierScore(many(40, { gauge: 0.9 }, null)).score).toBeNull();
  });

  it('has the usual interval of a mean where every height is a round of its own', () => {
    const heights = [
      ...many(12, { gauge: 0.9, body: 0.1 }, 'gauge'),
      ...many(8, { gauge: 0.4, body: 0.6 }, 'gauge'),
    ];
    const scores = [...Array<number>(12).fill(0.02), ...Array<number>(8).fill(0.72)];
    const mean = scores.reduce((sum, value) => sum + value, 0) / 20;
    const variance = scores.reduce((sum, value) => sum + (value - mean) ** 2, 0) / 19;
    const { score, low, high } = brierScore(heights);
    expect(score).toBeCloseTo(mean, 12);
    expect(high).toBeCloseTo(mean + 1.959964 * Math.sqrt(variance / 20), 9);
    expect(low).toBeCloseTo(mean - 1.959964 * Math.sqrt(variance / 20), 9);
  });

  it('is wider by √2 where both sides of a round are alike', () => {
    const one = [
      ...many(12, { gauge: 0.9, body: 0.1 }, 'gauge'),
      ...many(12, { gauge: 0.4, body: 0.6 }, 'gauge'),
    ];
    const width = ({ low, high }: { low: number | null; high: number | null }) => (high ?? 0) - (low ?? 0);
    const apart = [...one, ...one.map((height) => ({ ...height, round: `${height.round} again` }))];
    // The factors R / (R − 1) of 24 and 48 rounds differ a little.
    const factor = Math.sqrt((2 * (24 / 23)) / (48 / 47));
    expect(width(brierScore([...one, ...one])) / width(brierScore(apart))).toBeCloseTo(factor, 9);
  });

  it('is told by month, in order, months without a proof left out', () => {
    const heights = [
      { ...said({ gauge: 1 }, 'gauge'), month: '2026-03' },
      { ...said({ gauge: 1 }, 'body'), month: '2026-01' },
      { ...said({ gauge: 1 }, null), month: '2026-02' },
    ];
    expect(brierByMonth(heights).map(({ month, score }) => [month, score])).toEqual([
      ['2026-01', 2],
      ['2026-03', 0],
    ]);
  });
});

describe('what was called', () => {
  const heights = [
    ...many(5, { gauge: 0.85, body: 0.15 }, 'gauge'),
    ...many(1, { gauge: 0.85, body: 0.15 }, 'body'),
    ...many(4, { gauge: 0.96, body: 0.04 }, 'gauge'),
  ];

  it('follows the cost of missing damage: a higher one calls fewer heights likely gauge', () => {
    const gauge = (cost: number) => calledHeights(heights, ['likely-gauge'], cost)[0];
    expect(gauge(4)).toMatchObject({ heights: 10, proved: { gauge: 9, body: 1 }, body: { share: 0.1 } });
    expect(gauge(9)).toMatchObject({ heights: 4, proved: { gauge: 4, body: 0 }, body: { share: 0, low: 0 } });
    expect(gauge(99)).toMatchObject({ heights: 0, body: { share: null, low: null, high: null } });
  });
});

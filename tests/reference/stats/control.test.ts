import { describe, expect, it } from 'vitest';
import { averageRunLength, controlConstants, cusum, cusumLimitFor, ewma, ewmaLimitFor } from '@/lib/stats';
import arl from '../data/05-control-charts/arl.json';
import constants from '../data/05-control-charts/constants.json';
import { expectAbsolute, expectRelative } from './closeness';

const NAMES = ['d2', 'd3', 'c4', 'A2', 'A3', 'D3', 'D4', 'B3', 'B4'] as const;

describe('controlConstants against numerical integration in Python', () => {
  it.each(constants.cases)('n = $n', (expected) => {
    const found = controlConstants(expected.n);
    for (const name of NAMES)
      expectAbsolute(found[name], expected[name], 1e-8 * Math.max(expected[name], 1e-3), name);
  });

  it('closed forms of the range of two and of three', () => {
    expectRelative(controlConstants(2).d2, 2 / Math.sqrt(Math.PI), 1e-13);
    expectRelative(controlConstants(2).d3, Math.sqrt(2 - 4 / Math.PI), 1e-12);
    expectRelative(controlConstants(3).d3, Math.sqrt(2 + (3 * Math.sqrt(3) - 9) / Math.PI), 1e-12);
  });

  it('the usual table (from memory), which rounds D4 of three down', () => {
    for (const row of constants.published.values) {
      const found = controlConstants(row.n);
      for (const name of NAMES) expectAbsolute(found[name], row[name], 1.1e-3, `${name} of ${row.n}`);
    }
  });
});

describe('averageRunLength against integral equations in Python', () => {
  it.each(arl.ewma)('EWMA λ = $lambda, L = $L, shift $shift', ({ lambda, L, shift, ...expected }) => {
    const found = averageRunLength({ chart: 'ewma', lambda, L }, shift);
    expectRelative(found, expected.arl, 1e-9);
    expectRelative(found, expected.published, 0.03);
  });

  it.each(arl.cusum)('CUSUM k = $k, h = $h, shift $shift', ({ k, h, shift, ...expected }) => {
    const chart = { chart: 'cusum', k, h } as const;
    expectRelative(averageRunLength(chart, shift), expected.arl, 1e-9);
    expectRelative(averageRunLength({ ...chart, sides: 'upper' }, shift), expected.arl_upper, 1e-9);
    // Solving with a nearly singular matrix, as the reference does, leaves few digits of a very long run.
    if (expected.arl_lower < 1e6) {
      expectRelative(averageRunLength({ ...chart, sides: 'lower' }, shift), expected.arl_lower, 1e-9);
    }
    expectRelative(averageRunLength(chart, shift), expected.published, 0.01);
  });

  it('head start of half h: 430 in control and 6.35 at one sd (Lucas and Crosier 1982, from memory)', () => {
    const chart = { chart: 'cusum', k: 0.5, h: 5, headStart: 2.5 } as const;
    expectRelative(averageRunLength(chart, 0), 430, 0.002);
    expectRelative(averageRunLength(chart, 1), 6.35, 0.002);
  });

  it('an EWMA of weight 1 is a chart of single observations: 370.4', () => {
    expectRelative(averageRunLength({ chart: 'individuals', L: 3 }), 370.398347345, 1e-11);
    expectRelative(averageRunLength({ chart: 'ewma', lambda: 1, L: 3 }), 370.398347345, 1e-10);
  });

  it('keeps its digits where runs are very long: a one-sided CUSUM against the closed form at h near 0', () => {
    // With h → 0 the chart alarms at the first x > k: ARL = 1/P(Z > k − shift); k = 10: 1/7.6198530241605e-24.
    const found = averageRunLength({ chart: 'cusum', k: 10, h: 1e-13, sides: 'upper' });
    expectRelative(found, 1 / 7.6198530241605261e-24, 1e-10);
  });
});

describe('designed limits', () => {
  it('give the run length that they were designed for', () => {
    for (const { lambda, L } of arl.ewma) {
      const length = averageRunLength({ chart: 'ewma', lambda, L });
      expectRelative(ewmaLimitFor(lambda, length), L, 1e-9);
    }
    for (const { k, h } of arl.cusum) {
      expectRelative(cusumLimitFor(k, averageRunLength({ chart: 'cusum', k, h })), h, 1e-9);
    }
  });
});

describe('charts of the NIST e-Handbook (data and printed results from memory)', () => {
  it('EWMA, 6.3.2.4: limits 50 ± 2.5884 and the last statistic 51.99', () => {
    const values = [
      52.0, 47.0, 53.0, 49.3, 50.1, 47.0, 51.0, 50.1, 51.2, 50.5, 49.6, 47.6, 49.9, 51.3, 47.8, 51.2, 52.6,
      52.4, 53.6, 52.1,
    ];
    const chart = ewma(values, { center: 50, sd: 2.0539, lambda: 0.3, L: 3 });
    expectAbsolute(chart.high[0], 52.5884, 1e-4);
    expectAbsolute(chart.low[19], 47.4115, 2e-4);
    expectAbsolute(chart.statistic[0], 50.6, 1e-9);
    expectAbsolute(chart.statistic[19], 51.99, 5e-3);
    expect(chart.alarms).toEqual([]);
  });

  it('CUSUM, 6.3.2.3: the upper sum passes h = 4.1959 at the 14th group and ends at 19.04', () => {
    const values = [
      324.925, 324.675, 324.725, 324.35, 325.35, 325.225, 324.125, 324.525, 325.225, 324.6, 324.625, 325.15,
      328.325, 327.25, 327.825, 328.5, 326.675, 327.775, 326.875, 328.35,
    ];
    const chart = cusum(values, { center: 325, sd: 1, k: 0.3175, h: 4.1959 });
    expectAbsolute(chart.upper[19], 19.05, 0.02);
    expect(chart.alarms[0]).toEqual({ at: 13, side: 'upper', since: 12 });
  });
});

import { describe, expect, it } from 'vitest';
import * as stats from '@/lib/stats';

describe('binomial', () => {
  it('limits are exactly 0 and 1 at the ends', () => {
    for (const method of ['wilson', 'jeffreys', 'clopper-pearson'] as const) {
      for (const n of [1, 2, 7, 1000, 1_000_000]) {
        expect(stats.binomialInterval(0, n, { method }).low).toBe(0);
        expect(stats.binomialInterval(n, n, { method }).high).toBe(1);
      }
    }
  });

  it('no trials: null with a reason', () => {
    expect(stats.binomialInterval(0, 0)).toEqual({ low: null, high: null, why: 'There are no trials yet.' });
  });
});

describe('scatter and mean', () => {
  it('no degrees of freedom: null with a reason', () => {
    expect(stats.sdInterval(0, 0)).toMatchObject({ low: null, high: null });
    expect(stats.sdInterval(0, 0).why).toMatch(/degrees of freedom/);
    expect(stats.meanInterval([]).mean).toBeNull();
    expect(stats.meanInterval([4])).toMatchObject({ mean: 4, sd: null, low: null });
  });

  it('infinite df give the normal interval', () => {
    expect(stats.tInterval(0, 1, Infinity).high).toBeCloseTo(1.959963984540054, 13);
  });
});

describe('betaBinomial', () => {
  it('one trial a unit tells nothing of the spread: pooled', () => {
    const fit = stats.betaBinomial([1, 0, 1, 1].map((x) => ({ x, n: 1 })));
    expect(fit).toMatchObject({ alpha: null, beta: null });
    expect(fit.units.map(({ mean }) => mean)).toEqual([0.75, 0.75, 0.75, 0.75]);
  });

  it('all successes: pooled at 1, with a lower limit below', () => {
    const fit = stats.betaBinomial([3, 8, 5].map((n) => ({ x: n, n })));
    expect(fit.units[0]).toMatchObject({ mean: 1, high: 1 });
    expect(fit.units[0]?.low).toBeLessThan(1);
  });

  it('all or nothing: the spread has no finite estimate', () => {
    const fit = stats.betaBinomial([
      { x: 4, n: 4 },
      { x: 0, n: 3 },
    ]);
    expect(fit.units.map(({ mean }) => mean)).toEqual([null, null]);
    expect(fit.why).toMatch(/no finite maximum/);
  });

  it('a unit without trials gets the common distribution', () => {
    const fit = stats.betaBinomial([
      { x: 1, n: 10 },
      { x: 9, n: 10 },
      { x: 5, n: 10 },
      { x: 0, n: 0 },
    ]);
    const { alpha, beta } = fit;
    if (alpha === null || beta === null) throw new Error('more spread than binomial was expected');
    expect(fit.units[3]?.mean).toBeCloseTo(alpha / (alpha + beta), 12);
  });

  it('no units, no trials: null with a reason', () => {
    expect(stats.betaBinomial([])).toMatchObject({ alpha: null, units: [], why: 'There are no trials yet.' });
  });
});

describe('funnelLimits', () => {
  it('rates of 0 and 1, one trial, no trial', () => {
    expect(stats.funnelLimits(0, 10)).toMatchObject({ low: 0, high: 0, lowAlarm: -1, highAlarm: 1 });
    expect(stats.funnelLimits(1, 10)).toMatchObject({ lowAlarm: 9, highAlarm: 11 });
    expect(stats.funnelLimits(0.5, 1)).toMatchObject({ lowAlarm: -1, highAlarm: 2 });
    expect(stats.funnelLimits(0.5, 0).low).toBeNull();
  });
});

describe('conformity', () => {
  it('one-sided and unlimited tolerances, with null or infinity', () => {
    const open = stats.conformity({ value: 1, uncertainty: 1, lower: null, upper: 1 });
    expect(open.probability).toBe(0.5);
    expect(stats.conformity({ value: 1, uncertainty: 1, lower: -Infinity, upper: 1 })).toEqual(open);
    expect(stats.conformity({ value: 1, uncertainty: 1 }).probability).toBe(1);
  });

  it('without uncertainty the edge is within', () => {
    const question = { uncertainty: 0, lower: -3, upper: 3 };
    expect(stats.conformity({ ...question, value: 3 })).toMatchObject({ probability: 1, nonconforming: 0 });
    expect(stats.conformity({ ...question, value: 3.1 })).toMatchObject({ probability: 0, above: 1 });
  });

  it('an interval far narrower than the uncertainty keeps its digits: φ(5) × width', () => {
    const width = 1e-9;
    const { probability } = stats.conformity({ value: 0, uncertainty: 1, lower: 5, upper: 5 + width });
    expect(probability / (Math.exp(-12.5) / Math.sqrt(2 * Math.PI)) / (5 + width - 5)).toBeCloseTo(1, 8);
  });
});

describe('decisionRisks', () => {
  const question = { processMean: 0.5, processSd: 1, uncertainty: 0.3, lower: -2, upper: 2 };

  it('a guard band wider than the tolerance accepts nothing', () => {
    const found = stats.decisionRisks({ ...question, guard: 2.5 });
    expect(found).toMatchObject({ consumer: 0, accepted: 0, nonconformingGivenAccepted: null });
    expect(found.producer).toBe(found.conforming);
  });

  it('no uncertainty and no process scatter are the limits of small ones', () => {
    for (const guard of [-0.4, 0, 0.4]) {
      for (const name of ['uncertainty', 'processSd'] as const) {
        const none = stats.decisionRisks({ ...question, guard, [name]: 0 });
        const little = stats.decisionRisks({ ...question, guard, [name]: 1e-9 });
        expect(none.consumer).toBeCloseTo(little.consumer, 8);
        expect(none.producer).toBeCloseTo(little.producer, 8);
      }
    }
  });

  it('without any limit nothing is risked', () => {
    expect(stats.decisionRisks({ ...question, lower: null, upper: null })).toMatchObject({
      consumer: 0,
      accepted: 1,
    });
  });
});

describe('tests for outliers', () => {
  it('too few or equal values: null with a reason, and no outlier', () => {
    expect(stats.grubbs([1, 2])).toMatchObject({ statistic: null, outlier: false });
    expect(stats.grubbs([2, 2, 2]).why).toBe('All values are equal.');
    expect(stats.cochran([0.3], 3).why).toMatch(/two standard deviations/);
    expect(stats.cochran([0, 0], 3).why).toMatch(/zero/);
    expect(stats.mandel({ means: [1, 2], sds: [0, 0], n: 2 })).toMatchObject({ h: null, k: null });
  });

  it('all the scatter in one place is an outlier of p 0', () => {
    expect(stats.cochran([0, 1, 0, 0], 3)).toMatchObject({ statistic: 1, p: 0, index: 1, outlier: true });
  });

  it('sides: the smallest value is no upper outlier', () => {
    const values = [-30, 0.1, 0.2, 0.3, 0.4, 0.5];
    expect(stats.grubbs(values, { sides: 'lower' })).toMatchObject({ index: 0, outlier: true });
    expect(stats.grubbs(values, { sides: 'upper' }).outlier).toBe(false);
  });
});

describe('robust', () => {
  it('degenerate data are not usable, with a reason', () => {
    expect(stats.algorithmA([])).toMatchObject({ mean: null, sd: null });
    expect(stats.algorithmA([3])).toMatchObject({ mean: 3, sd: null });
    expect(stats.algorithmA([1, 1, 1])).toMatchObject({ mean: 1, sd: null });
    expect(stats.algorithmS([0, 0, 1], 1)).toMatchObject({ sd: null });
    expect(stats.algorithmS([], 1).why).toMatch(/no standard deviations/);
  });
});

describe('digitPreference', () => {
  it('no readings: null with a reason', () => {
    expect(stats.digitPreference([0, 0, 0])).toMatchObject({ chiSquare: null, p: null, exactP: null });
  });

  it('equal counts: nothing is likelier, p = 1', () => {
    const { chiSquare, exactP, exactPByChiSquare } = stats.digitPreference([3, 3, 3, 3]);
    expect(chiSquare).toBe(0);
    expect(exactP).toBeCloseTo(1, 12);
    expect(exactPByChiSquare).toBeCloseTo(1, 12);
  });

  it('too many readings for the exact p: null, said in words', () => {
    const found = stats.digitPreference([400, 380, 410, 390, 405, 395, 400, 410, 390, 400]);
    expect(found.exactP).toBeNull();
    expect(found.why).toMatch(/too many/);
    expect(found.p).toBeGreaterThan(0.9);
  });
});

describe('charts', () => {
  it('no values: empty charts; one value: no moving range', () => {
    expect(stats.ewma([], { center: 0, sd: 1, L: 3 }).statistic).toEqual([]);
    expect(stats.individuals([])).toMatchObject({ center: null, sd: null });
    expect(stats.individuals([5])).toMatchObject({
      center: 5,
      sd: null,
      why: 'A moving range needs two values.',
    });
  });

  it('individuals: center ± 2.66 mean moving range', () => {
    const chart = stats.individuals([10, 12, 11, 30]);
    expect(chart.meanMovingRange).toBeCloseTo(22 / 3, 12);
    expect(chart.high).toBeCloseTo(15.75 + ((3 * Math.sqrt(Math.PI)) / 2) * (22 / 3), 10);
    expect(chart.movingRangeHigh).toBeCloseTo(3.2665319 * (22 / 3), 5);
  });

  it('exact EWMA limits widen towards the asymptotic ones', () => {
    const { high } = stats.ewma([0, 0, 0], { center: 0, sd: 1, lambda: 0.5, L: 3, limits: 'exact' });
    expect(high[0]).toBeCloseTo(1.5, 12);
    expect(high[2]).toBeLessThan(3 * Math.sqrt(1 / 3));
  });
});

describe('planning', () => {
  it('a huge difference still needs two readings', () => {
    expect(stats.readingsNeeded({ question: 'bias', difference: 1000, sd: 1 })).toMatchObject({
      n: 2,
      exact: 2,
      powerWithOneFewer: null,
    });
  });

  it('a few readings a setup need whole setups', () => {
    const plan = stats.readingsNeeded({ question: 'repeatability', ratio: 1.5, readingsPerSetup: 3 });
    expect(plan).toMatchObject({ df: 17, setups: 9, n: 27 });
  });
});

describe('logisticRegression', () => {
  const separated = { successes: [0, 0, 0, 1, 1, 1], covariates: { a: [1, 2, 3, 4, 5, 6] } };

  it('separation: no fit without a ridge, a finite one with it', () => {
    expect(stats.logisticRegression({ ...separated, ridge: 0 }).why).toMatch(/separate/);
    const fit = stats.logisticRegression(separated);
    expect(fit.why).toBeNull();
    expect(fit.coefficients?.[0]?.estimate).toBeGreaterThan(0);
  });

  it('all alike, constant, or combined covariates: null with a reason', () => {
    expect(stats.logisticRegression({ successes: [1, 1], covariates: {} }).why).toMatch(/alike/);
    expect(stats.logisticRegression({ successes: [1, 0], covariates: { a: [2, 2] } }).why).toMatch(
      /a is the same/,
    );
    const twice = { a: [1, 2, 3, 4], b: [2, 4, 6, 8] };
    expect(stats.logisticRegression({ successes: [1, 0, 1, 0], covariates: twice, ridge: 0 }).why).toMatch(
      /b is a combination/,
    );
  });

  it('without covariates the intercept is the log-odds', () => {
    const fit = stats.logisticRegression({ successes: [3, 1], trials: [4, 4], covariates: {} });
    expect(fit.intercept?.estimate).toBeCloseTo(0, 12);
    expect(fit.intercept?.se).toBeCloseTo(1 / Math.sqrt(2), 12);
  });

  it('a row without trials only gets its chance', () => {
    const fit = stats.logisticRegression({
      successes: [1, 3, 0],
      trials: [4, 4, 0],
      covariates: { a: [0, 1, 0.5] },
    });
    expect(fit.fitted?.[2]).toBeCloseTo(0.5, 10);
  });
});

describe('changePoint', () => {
  it('too few or equal values: null with a reason', () => {
    expect(stats.changePoint([1, 2, 3])).toMatchObject({ at: null, p: null });
    expect(stats.changePoint([1, 1, 1, 1]).why).toBe('All values are equal.');
  });

  it('a clean step is found for certain', () => {
    expect(stats.changePoint([0, 0, 0, 5, 5, 5])).toMatchObject({ at: 3, low: 3, high: 3, change: 5, p: 0 });
  });
});

it('benjaminiHochberg of nothing is nothing', () => {
  expect(stats.benjaminiHochberg([])).toEqual([]);
});

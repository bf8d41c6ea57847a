import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import {
  algorithmA,
  algorithmS,
  benjaminiHochberg,
  changePoint,
  cochran,
  digitPreference,
  grubbs,
  logisticRegression,
  mandel,
  readingsNeeded,
} from '@/lib/stats';

const number = (min: number, max: number) => fc.double({ min, max, noNaN: true });
/** Values on a grid, so that a change of unit cannot merge or part two of them. */
const values = fc.array(
  fc.integer({ min: -500, max: 500 }).map((i) => i / 10),
  { minLength: 4, maxLength: 25 },
);
const scale = fc.constantFrom(0.5, 2, 8, 1024);
const shift = fc.integer({ min: -100, max: 100 });

describe('screens for outliers', () => {
  it('Grubbs: the same statistic in another unit, from another origin; mirrored sides', () => {
    fc.assert(
      fc.property(values, scale, shift, (list, by, to) => {
        const here = grubbs(list);
        const there = grubbs(list.map((value) => value * by + to));
        if (here.statistic === null) return;
        expect(there.statistic ?? NaN).toBeCloseTo(here.statistic, 9);
        expect(here.outlier).toBe((here.p ?? NaN) < 0.05);
        const mirrored = list.map((value) => -value);
        expect(grubbs(mirrored, { sides: 'upper' }).statistic ?? NaN).toBeCloseTo(
          grubbs(list, { sides: 'lower' }).statistic ?? NaN,
          9,
        );
      }),
      { seed: 1 },
    );
  });

  it('Cochran: the same in another unit; p below the level exactly where it calls an outlier', () => {
    const sds = fc.array(number(0.01, 10), { minLength: 2, maxLength: 12 });
    fc.assert(
      fc.property(sds, scale, fc.integer({ min: 2, max: 8 }), (list, by, n) => {
        const here = cochran(list, n);
        const there = cochran(
          list.map((sd) => sd * by),
          n,
        );
        expect(there.statistic).toBe(here.statistic);
        expect(here.outlier).toBe((here.p ?? NaN) < 0.05);
      }),
      { seed: 2 },
    );
  });

  it('Mandel: h does not see unit and origin, k not the unit', () => {
    fc.assert(
      fc.property(values, scale, shift, (means, by, to) => {
        const sds = means.map((_, i) => 0.1 + (i % 3));
        const here = mandel({ means, sds, n: 3 });
        const there = mandel({ means: means.map((m) => m * by + to), sds: sds.map((sd) => sd * by), n: 3 });
        here.h?.forEach((h, i) => expect(there.h?.[i]).toBeCloseTo(h, 8));
        here.k?.forEach((k, i) => expect(there.k?.[i]).toBeCloseTo(k, 12));
      }),
      { seed: 3 },
    );
  });
});

describe('robust', () => {
  it('Algorithm A follows unit and origin, ignores the order, and satisfies its own equations', () => {
    fc.assert(
      fc.property(values, scale, shift, (list, by, to) => {
        const here = algorithmA(list);
        const there = algorithmA([...list].reverse().map((value) => value * by + to));
        expect(there.sd === null).toBe(here.sd === null);
        if (here.sd === null || here.mean === null) return;
        const { mean, sd } = here;
        expect(there.mean ?? NaN).toBeCloseTo(mean * by + to, 6);
        expect((there.sd ?? NaN) / (sd * by)).toBeCloseTo(1, 9);
        const pulled = list.map((value) => Math.min(Math.max(value, mean - 1.5 * sd), mean + 1.5 * sd));
        const average = pulled.reduce((sum, value) => sum + value, 0) / list.length;
        expect(average).toBeCloseTo(mean, 9);
        const squares = pulled.reduce((sum, value) => sum + (value - mean) ** 2, 0);
        expect(1.134 * Math.sqrt(squares / (list.length - 1))).toBeCloseTo(sd, 9);
      }),
      { seed: 4 },
    );
  });

  it('Algorithm S follows the unit, and one wild value moves it by a bounded factor', () => {
    const sds = fc.array(number(0.5, 2), { minLength: 5, maxLength: 15 });
    fc.assert(
      fc.property(sds, scale, fc.integer({ min: 1, max: 12 }), (list, by, df) => {
        const here = algorithmS(list, df).sd ?? NaN;
        const scaled = algorithmS(
          list.map((sd) => sd * by),
          df,
        ).sd;
        expect((scaled ?? NaN) / (here * by)).toBeCloseTo(1, 9);
        const wild = algorithmS([...list, 1e6], df).sd ?? NaN;
        expect(wild).toBe(algorithmS([...list, 1e9], df).sd);
        expect(wild).toBeGreaterThan(here * 0.99);
      }),
      { seed: 5 },
    );
  });
});

describe('digitPreference', () => {
  /** Every table of n readings over the cells, with its probability. */
  function tables(cells: number, n: number): number[][] {
    if (cells === 1) return [[n]];
    return Array.from({ length: n + 1 }, (_, first) =>
      tables(cells - 1, n - first).map((rest) => [first, ...rest]),
    ).flat();
  }
  const factorial = (k: number): number => (k < 2 ? 1 : k * factorial(k - 1));

  it('exact p is the sum over every table, gone through one by one', () => {
    fc.assert(
      fc.property(fc.array(fc.nat(4), { minLength: 2, maxLength: 5 }), (counts) => {
        const n = counts.reduce((sum, count) => sum + count, 0);
        if (n === 0) return;
        const ways = (table: number[]) =>
          table.reduce((left, count) => left / factorial(count), factorial(n));
        const squares = (table: number[]) => table.reduce((sum, count) => sum + count * count, 0);
        let byProbability = 0;
        let byChiSquare = 0;
        for (const table of tables(counts.length, n)) {
          if (ways(table) <= ways(counts) * (1 + 1e-9)) byProbability += ways(table) / counts.length ** n;
          if (squares(table) >= squares(counts)) byChiSquare += ways(table) / counts.length ** n;
        }
        const found = digitPreference(counts);
        expect((found.exactP ?? NaN) / Math.min(1, byProbability)).toBeCloseTo(1, 10);
        expect((found.exactPByChiSquare ?? NaN) / Math.min(1, byChiSquare)).toBeCloseTo(1, 10);
      }),
      { seed: 6, numRuns: 60 },
    );
  });

  it('does not know which digit is which', () => {
    fc.assert(
      fc.property(fc.array(fc.nat(6), { minLength: 10, maxLength: 10 }), (counts) => {
        const here = digitPreference(counts);
        const there = digitPreference([...counts].reverse());
        expect(there.exactP ?? 0).toBeCloseTo(here.exactP ?? 0, 12);
        expect(there.chiSquare ?? 0).toBeCloseTo(here.chiSquare ?? 0, 9);
      }),
      { seed: 7, numRuns: 20 },
    );
  });
});

describe('readingsNeeded', () => {
  it('only the ratio of difference to sd matters; a smaller one, or more power, needs more', () => {
    const question = fc.constantFrom('bias' as const, 'difference' as const);
    fc.assert(
      fc.property(question, number(0.3, 3), number(0.5, 0.95), scale, (which, difference, power, by) => {
        const ask = (d: number, sd: number, p: number) =>
          readingsNeeded({ question: which, difference: d, sd, power: p });
        const here = ask(difference, 1, power);
        expect(ask(difference * by, by, power).exact).toBeCloseTo(here.exact, 8);
        expect(ask(difference / 2, 1, power).n).toBeGreaterThanOrEqual(here.n);
        expect(ask(difference, 1, (1 + power) / 2).n).toBeGreaterThanOrEqual(here.n);
        expect(here.power).toBeGreaterThanOrEqual(power - 1e-9);
        if (here.powerWithOneFewer !== null) expect(here.powerWithOneFewer).toBeLessThan(power);
      }),
      { seed: 8, numRuns: 25 },
    );
  });
});

describe('benjaminiHochberg', () => {
  it('calls exactly those that the step-up rule calls, at any level', () => {
    const list = fc.array(number(0, 1), { minLength: 1, maxLength: 30 });
    fc.assert(
      fc.property(list, number(0.001, 0.5), (p, q) => {
        const adjusted = benjaminiHochberg(p);
        const sorted = [...p].sort((a, b) => a - b);
        const last = sorted.reduce((k, value, i) => (value <= (q * (i + 1)) / p.length ? i + 1 : k), 0);
        expect(adjusted.filter((value) => value <= q).length).toBe(last);
        adjusted.forEach((value, i) => expect(value).toBeGreaterThanOrEqual(p[i] ?? NaN));
      }),
      { seed: 9 },
    );
  });
});

describe('logisticRegression', () => {
  const rows = fc.array(
    fc.record({ a: fc.integer({ min: -5, max: 5 }), n: fc.integer({ min: 1, max: 6 }), share: number(0, 1) }),
    { minLength: 4, maxLength: 15 },
  );

  it('follows unit and origin of a covariate, and splitting a row changes only the ridge’s scale, not ML', () => {
    fc.assert(
      fc.property(rows, (list) => {
        const successes = list.map(({ n, share }) => Math.round(n * share));
        const trials = list.map(({ n }) => n);
        const a = list.map((row) => row.a);
        const here = logisticRegression({ successes, trials, covariates: { a } });
        const moved = logisticRegression({ successes, trials, covariates: { a: a.map((x) => 4 * x + 100) } });
        expect(moved.why === null).toBe(here.why === null);
        here.fitted?.forEach((chance, i) => expect(moved.fitted?.[i]).toBeCloseTo(chance, 8));

        const whole = logisticRegression({ successes, trials, covariates: { a }, ridge: 0 });
        if (whole.why !== null) return;
        const single = list.flatMap((row, i) =>
          Array.from({ length: row.n }, (_, j) => ({ a: row.a, y: j < (successes[i] ?? 0) ? 1 : 0 })),
        );
        const split = logisticRegression({
          successes: single.map(({ y }) => y),
          covariates: { a: single.map((row) => row.a) },
          ridge: 0,
        });
        expect(split.coefficients?.[0]?.estimate).toBeCloseTo(whole.coefficients?.[0]?.estimate ?? NaN, 6);
        expect(split.logLikelihood).toBeCloseTo(whole.logLikelihood ?? NaN, 8);
      }),
      { seed: 10, numRuns: 60 },
    );
  });
});

describe('changePoint', () => {
  it('follows unit and origin, and read backwards finds the same place', () => {
    fc.assert(
      fc.property(values, scale, shift, (list, by, to) => {
        const here = changePoint(list);
        const there = changePoint([...list].reverse().map((value) => value * by + to));
        if (here.p === null || here.p === 0) return;
        expect(there.p ?? NaN).toBeCloseTo(here.p, 8);
        here.probabilities.forEach((p, m) => {
          if (m > 0) expect(there.probabilities[list.length - m]).toBeCloseTo(p, 7);
        });
      }),
      { seed: 11 },
    );
  });
});

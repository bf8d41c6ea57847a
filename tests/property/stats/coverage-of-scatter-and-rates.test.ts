import { describe, expect, it } from 'vitest';
import {
  betaBinomial,
  binomialInterval,
  changePoint,
  logisticRegression,
  meanInterval,
  sdInterval,
  type BinomialMethod,
} from '@/lib/stats';
import { binomialProbability } from '@/lib/stats/distributions';
import { randomAt, type Random } from '@/seed/random';

/** Share of the repetitions in which nominal 95 % limits hold the truth. */
function coverage(repetitions: number, seed: number, once: (random: Random) => boolean | null): number {
  const random = randomAt(seed);
  const held = Array.from({ length: repetitions }, () => once(random)).filter((answer) => answer !== null);
  return held.filter(Boolean).length / held.length;
}

const holds = ({ low, high }: { low: number | null; high: number | null }, truth: number) =>
  low !== null && high !== null && low <= truth && truth <= high;

const within = (share: number) => {
  expect(share).toBeGreaterThan(0.93);
  expect(share).toBeLessThan(0.97);
};

describe('nominal 95 % intervals cover 93 to 97 % (seeded)', () => {
  it.each([3, 6, 12])('scatter pooled over %d setups of two or three readings', (setups) => {
    within(
      coverage(4000, setups, (random) => {
        let squares = 0;
        let df = 0;
        for (let setup = 0; setup < setups; setup++) {
          const values = Array.from({ length: random.whole(2, 3) }, () => random.normal(0.7));
          const { sd } = meanInterval(values);
          squares += (values.length - 1) * (sd ?? NaN) ** 2;
          df += values.length - 1;
        }
        return holds(sdInterval(Math.sqrt(squares / df), df), 0.7);
      }),
    );
  });

  it.each([2, 3, 10])('the mean of %d values', (n) => {
    within(
      coverage(4000, 100 + n, (random) =>
        holds(meanInterval(Array.from({ length: n }, () => random.normal(2))), 0),
      ),
    );
  });

  it('a logistic coefficient from 100 jobs, ridge of the default weight', () => {
    within(coverage(1500, 300, (random) => logisticCovers(random, 100)));
  });
});

describe('binomial coverage, computed exactly', () => {
  const rates = Array.from({ length: 99 }, (_, i) => (i + 1) / 100);
  const covered = (method: BinomialMethod, n: number, p: number) => {
    let sum = 0;
    for (let x = 0; x <= n; x++)
      if (holds(binomialInterval(x, n, { method }), p)) sum += binomialProbability(x, n, p);
    return sum;
  };

  it.each([10, 25, 60])('Wilson and Jeffreys hold 93 to 97 %% on average over the rates, n = %d', (n) => {
    for (const method of ['wilson', 'jeffreys'] as const) {
      within(rates.reduce((sum, p) => sum + covered(method, n, p), 0) / rates.length);
    }
  });

  it('Clopper–Pearson holds at least 95 % at every rate', () => {
    for (const p of rates) expect(covered('clopper-pearson', 25, p)).toBeGreaterThanOrEqual(0.95);
  });
});

describe('intervals that do not cover what they name, as their docstrings say', () => {
  it('the limits of drawn-together rates are too narrow with few units', () => {
    for (const [technicians, least, most] of [
      [5, 0.78, 0.89],
      [12, 0.84, 0.93],
    ] as const) {
      const random = randomAt(300 + technicians);
      let held = 0;
      let units = 0;
      for (let shop = 0; shop < 150; shop++) {
        const rates = Array.from({ length: technicians }, () => drawBeta(random, 17, 3));
        const fit = betaBinomial(rates.map((p) => drawUnit(random, random.whole(10, 60), p)));
        if (fit.alpha === null) continue;
        units += technicians;
        held += fit.units.filter((unit, i) => holds(unit, rates[i] ?? NaN)).length;
      }
      expect(held / units).toBeGreaterThan(least);
      expect(held / units).toBeLessThan(most);
    }
  });

  it('a logistic coefficient from 30 jobs covers somewhat more', () => {
    const share = coverage(1500, 230, (random) => logisticCovers(random, 30));
    expect(share).toBeGreaterThan(0.95);
    expect(share).toBeLessThan(0.99);
  });

  it('the stretch of a change point holds somewhat more than 95 %', () => {
    const share = coverage(1500, 400, (random) => {
      const place = random.whole(5, 15);
      const { low, high } = changePoint(
        Array.from({ length: 20 }, (_, i) => random.normal(1) + (i >= place ? 2 : 0)),
      );
      return holds({ low, high }, place);
    });
    expect(share).toBeGreaterThan(0.95);
    expect(share).toBeLessThan(0.995);
  });

  it('a change where there is none is called in at most 5 %', () => {
    const called = coverage(1500, 401, (random) => {
      const { p } = changePoint(Array.from({ length: 20 }, () => random.normal(1)));
      return (p ?? 1) < 0.05;
    });
    expect(called).toBeLessThan(0.05);
    expect(called).toBeGreaterThan(0.01);
  });
});

/** Null where the draw has no fit (all outcomes alike). */
function logisticCovers(random: Random, jobs: number): boolean | null {
  const a = Array.from({ length: jobs }, () => random.normal(1));
  const successes = a.map((x) => (random.chance(1 / (1 + Math.exp(-(1 + 0.8 * x)))) ? 1 : 0));
  const coefficient = logisticRegression({ successes, covariates: { a } }).coefficients?.[0];
  return coefficient ? holds(coefficient, 0.8) : null;
}

/** Beta of whole shapes as a ratio of sums of exponentials. */
function drawBeta(random: Random, alpha: number, beta: number): number {
  const sum = (count: number) =>
    Array.from({ length: count }, () => -Math.log(1 - random.between(0, 1))).reduce((a, b) => a + b, 0);
  const a = sum(alpha);
  return a / (a + sum(beta));
}

function drawUnit(random: Random, n: number, p: number): { x: number; n: number } {
  return { x: Array.from({ length: n }, () => random.chance(p)).filter(Boolean).length, n };
}

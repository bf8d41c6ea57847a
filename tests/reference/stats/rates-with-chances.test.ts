import { describe, expect, it } from 'vitest';
import {
  betaBinomialRow,
  binomialCdf,
  binomialProbability,
  binomialInterval,
  meanChangePoint,
  changePoint,
  observedOverExpected,
  poissonBinomial,
  rateChangePoint,
  rateDifference,
  sdRatio,
  slope,
  widenedFunnelLimits,
  funnelLimits,
} from '@/lib/stats';
import { Random } from '@/tests/simulation/random';
import { expectAbsolute, expectRelative } from './closeness';

const CHANCES = [0.95, 0.9, 0.9, 0.72, 0.6, 0.55, 0.31, 0.12];

/** P(X = k) by going through all outcomes. */
function enumerated(chances: readonly number[]): number[] {
  const row = new Array<number>(chances.length + 1).fill(0);
  for (let bits = 0; bits < 1 << chances.length; bits++) {
    let probability = 1;
    let count = 0;
    chances.forEach((p, i) => {
      const success = (bits >> i) & 1;
      count += success;
      probability *= success ? p : 1 - p;
    });
    row[count] = (row[count] ?? 0) + probability;
  }
  return row;
}

describe('poissonBinomial', () => {
  it('is what going through all 256 outcomes of eight trials gives', () => {
    const expected = enumerated(CHANCES);
    const found = poissonBinomial(CHANCES);
    expected.forEach((p, k) => expectRelative(found.probability(k), p, 1e-13));
    expectRelative(
      found.atMost(3),
      expected.slice(0, 4).reduce((a, b) => a + b),
      1e-13,
    );
    expectRelative(
      found.atLeast(7),
      expected.slice(7).reduce((a, b) => a + b),
      1e-13,
    );
  });

  it('loses nothing that counts where 3,000 trials are added and the ends are dropped', () => {
    const found = poissonBinomial(Array.from({ length: 3000 }, () => 0.8));
    for (const k of [2330, 2400, 2470]) {
      expectRelative(found.probability(k), binomialProbability(k, 3000, 0.8), 1e-11);
      expectRelative(found.atMost(k), binomialCdf(k, 3000, 0.8), 1e-10);
    }
    expect(binomialCdf(found.quantile(0.025) - 1, 3000, 0.8)).toBeLessThan(0.025);
    expect(binomialCdf(found.quantile(0.025), 3000, 0.8)).toBeGreaterThanOrEqual(0.025);
  });
});

describe('observedOverExpected', () => {
  it('with equal chances is the Clopper–Pearson interval over the chance', () => {
    const found = observedOverExpected(31, new Array<number>(40).fill(0.85));
    const { low, high } = binomialInterval(31, 40, { method: 'clopper-pearson' });
    expectRelative(found.low, (low ?? NaN) / 0.85, 1e-9);
    expectRelative(found.high, (high ?? NaN) / 0.85, 1e-9);
  });

  it('puts the count at the edge of either tail, by going through all outcomes', () => {
    const found = observedOverExpected(3, CHANCES);
    /** The chances with all log-odds moved until their sum is `ratio` times what it was. */
    const moved = (ratio: number) => {
      let [low, high] = [-30, 30];
      const at = (theta: number) => CHANCES.map((p) => 1 / (1 + ((1 - p) / p) * Math.exp(-theta)));
      const sum = (values: readonly number[]) => values.reduce((a, b) => a + b, 0);
      for (let i = 0; i < 200; i++) {
        const middle = (low + high) / 2;
        if (sum(at(middle)) < ratio * sum(CHANCES)) low = middle;
        else high = middle;
      }
      return enumerated(at(low));
    };
    const below = moved(found.high ?? NaN).slice(0, 4);
    const above = moved(found.low ?? NaN).slice(3);
    expectAbsolute(
      below.reduce((a, b) => a + b),
      0.025,
      1e-10,
    );
    expectAbsolute(
      above.reduce((a, b) => a + b),
      0.025,
      1e-10,
    );
  });

  it('holds the true ratio in at least 95 of 100 seeded groups of unequal jobs', () => {
    const random = new Random(71);
    const chances = Array.from({ length: 25 }, (_, i) => 0.45 + 0.02 * i);
    const truth = chances.map((p) => p / (p + (1 - p) * 2));
    const ratio = truth.reduce((a, b) => a + b) / chances.reduce((a, b) => a + b);
    let held = 0;
    const runs = 400;
    for (let run = 0; run < runs; run++) {
      const seen = truth.filter((p) => random.chance(p)).length;
      const { low, high } = observedOverExpected(seen, chances);
      if (low !== null && high !== null && low <= ratio && ratio <= high) held++;
    }
    expect(held / runs).toBeGreaterThanOrEqual(0.94);
  });

  it('says why where nothing is expected, and reaches 0 and the whole at the ends', () => {
    expect(observedOverExpected(0, [])).toMatchObject({ ratio: null, why: 'There are no trials yet.' });
    expect(observedOverExpected(0, CHANCES).low).toBe(0);
    expectRelative(observedOverExpected(8, CHANCES).high, 8 / 5.05, 1e-12);
    expect(() => observedOverExpected(9, CHANCES)).toThrow(/more successes/);
  });
});

describe('widenedFunnelLimits', () => {
  it('are those of scipy 1.17 betabinom(40, …) around 0.85 with a spread of 0.05', () => {
    const strength = (0.85 * 0.15) / 0.05 ** 2 - 1;
    const row = betaBinomialRow(40, 0.85 * strength, 0.15 * strength);
    expectRelative(row[25], 0.003883351703907311, 1e-9);
    expectRelative(row[34], 0.12915275356102005, 1e-9);
    expectRelative(row[40], 0.008935280023912119, 1e-9);
    const at95 = widenedFunnelLimits(0.85, 40, 0.05);
    expectAbsolute(at95.low, 0.670662813459766, 1e-9);
    expectAbsolute(at95.high, 0.9627892776858777, 1e-9);
    const at998 = widenedFunnelLimits(0.85, 40, 0.05, 0.998);
    expectAbsolute(at998.low, 0.5519853609010676, 1e-9);
    expectAbsolute(at998.high, 0.9972021022359572, 1e-9);
  });

  it('go to the binomial ones as the spread goes to 0, and never inside them', () => {
    for (const n of [1, 3, 12, 40, 150]) {
      const plain = funnelLimits(0.8, n);
      const near = widenedFunnelLimits(0.8, n, 1e-5);
      expectAbsolute(near.low, plain.low ?? NaN, 1e-4);
      expectAbsolute(near.high, plain.high ?? NaN, 1e-4);
      const wide = widenedFunnelLimits(0.8, n, 0.06);
      expect(wide.lowAlarm).toBeLessThanOrEqual(plain.lowAlarm ?? NaN);
      expect(wide.highAlarm).toBeGreaterThanOrEqual(plain.highAlarm ?? NaN);
    }
  });
});

describe('rateDifference', () => {
  it('56/70 − 48/80: 0.0524 to 0.3339 (Newcombe 1998, Table II, method 10; from memory)', () => {
    const found = rateDifference({ x: 56, n: 70 }, { x: 48, n: 80 });
    expectAbsolute(found.low, 0.0524, 5e-5);
    expectAbsolute(found.high, 0.3339, 5e-5);
  });
});

describe('sdRatio and slope', () => {
  it('0.42 with 18 df over 0.31 with 25 df, by scipy 1.17 f.ppf and f.sf', () => {
    const found = sdRatio({ sd: 0.42, df: 18 }, { sd: 0.31, df: 25 });
    expectRelative(found.low, 0.8860434041924622, 1e-10);
    expectRelative(found.high, 2.1384215280237715, 1e-10);
    expectRelative(found.p, 0.15875492517959683, 1e-9);
  });

  it('a slope by scipy 1.17 linregress, also on dates as large numbers', () => {
    const x = [0, 31, 64, 92, 131, 170];
    const y = [0.1, 0.22, 0.15, 0.41, 0.38, 0.62];
    for (const shift of [0, 1.7e12]) {
      const found = slope(
        x.map((value) => value + shift),
        y,
      );
      expectRelative(found.slope, 0.0028360760130039884, 1e-12);
      expectRelative(found.se, 0.0006010183386267351, 1e-12);
      expectRelative(found.p, 0.00917982896073455, 1e-9);
    }
    expect(slope([1, 2], [1, 2]).why).toMatch(/three points/);
    expect(slope([1, 1, 1], [1, 2, 3]).why).toMatch(/same place/);
  });
});

describe('changes between groups', () => {
  it('meanChangePoint of single values is changePoint', () => {
    const random = new Random(4);
    const values = Array.from({ length: 24 }, (_, i) => random.normal(i < 15 ? 0 : 1.2));
    const plain = changePoint(values, { least: 1 });
    const grouped = meanChangePoint(values.map((mean) => ({ n: 1, mean, ss: 0 })));
    expect([grouped.at, grouped.low, grouped.high]).toEqual([plain.at, plain.low, plain.high]);
    expectRelative(grouped.p, plain.p ?? NaN, 1e-9);
    plain.probabilities.forEach((p, i) => expectAbsolute(grouped.probabilities[i], p, 1e-12));
  });

  it('rateChangePoint weighs the places as integrating the likelihood over both rates does', () => {
    const groups = [
      { x: 9, n: 10 },
      { x: 8, n: 9 },
      { x: 4, n: 9 },
      { x: 5, n: 11 },
    ];
    const integral = (x: number, n: number) => {
      let sum = 0;
      for (let i = 0; i < 20_000; i++) {
        const p = (i + 0.5) / 20_000;
        sum += p ** x * (1 - p) ** (n - x);
      }
      return sum / 20_000;
    };
    const weights = [1, 2, 3].map((at) => {
      const total = (list: typeof groups) =>
        [list.reduce((sum, { x }) => sum + x, 0), list.reduce((sum, { n }) => sum + n, 0)] as const;
      return integral(...total(groups.slice(0, at))) * integral(...total(groups.slice(at)));
    });
    const all = weights.reduce((a, b) => a + b);
    const found = rateChangePoint(groups);
    weights.forEach((weight, i) => expectRelative(found.probabilities[i + 1], weight / all, 1e-6));
    expect(found.at).toBe(2);
  });

  it('an empty month is no place of its own, and two alike months hold no change', () => {
    const found = rateChangePoint([
      { x: 9, n: 10 },
      { x: 0, n: 0 },
      { x: 2, n: 10 },
    ]);
    expect(found.at).toBe(2);
    expect(found.probabilities[1]).toBe(0);
    expect(
      rateChangePoint([
        { x: 5, n: 5 },
        { x: 5, n: 5 },
      ]).why,
    ).toBe('All outcomes are alike.');
    expect(meanChangePoint([{ n: 3, mean: 1, ss: 0 }]).why).toMatch(/two groups/);
  });
});

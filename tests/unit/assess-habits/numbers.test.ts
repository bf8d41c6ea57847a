import { describe, expect, it } from 'vitest';
import { againstOthers } from '@/lib/assess/habits/judge/against-others';
import { moreOften } from '@/lib/assess/habits/judge/rates';
import { fivesByChance } from '@/lib/assess/habits/judge/by-chance';
import { mostOnWhole, sameValueChance } from '@/lib/assess/habits/judge/same-value';
import { smoothMiddle } from '@/lib/assess/habits/judge/smooth-middle';
import { addMoments, clusterOf, noMoments, ratioOf } from '@/lib/assess/habits/moments';
import { normalBetween } from '@/lib/stats/distributions';
import { Random } from '@/tests/simulation/random';

describe('the chance that repeats show one value', () => {
  const simulate = (n: number, sd: number, coarseShare: number): number => {
    const random = new Random(5);
    let same = 0;
    const trials = 60_000;
    for (let trial = 0; trial < trials; trial++) {
      const truth = random.uniform(0, 0.5);
      const values = Array.from({ length: n }, () => {
        const step = random.chance(coarseShare) ? 0.5 : 0.1;
        return Math.round(Math.round((truth + random.normal(0, sd)) / step) * step * 10);
      });
      if (values.every((value) => value === values[0])) same++;
    }
    return same / trials;
  };

  it.each([
    [2, 0.5, 0],
    [2, 0.3, 0.6],
    [3, 0.2, 0],
    [3, 0.4, 0.9],
  ])(
    'of %i readings with sd %f, %f of them taken to halves, is that of a simulation',
    (n, sd, coarseShare) => {
      const chance = sameValueChance(n, { sd, fine: 0.1, coarse: 0.5, coarseShare });
      const found = simulate(n, sd, coarseShare);
      expect(Math.abs(chance - found)).toBeLessThan(4 * Math.sqrt((chance * (1 - chance)) / 60_000));
    },
  );

  it('is h / (2 r √π) for two readings in steps h far below their sd r', () => {
    const chance = sameValueChance(2, { sd: 1, fine: 0.01, coarse: 0.05, coarseShare: 0 });
    expect(chance).toBeCloseTo(0.01 / (2 * Math.sqrt(Math.PI)), 7);
  });

  it('that halves fall on whole millimetres nears one half as scatter grows', () => {
    expect(mostOnWhole(0.04)).toBeCloseTo(1, 6);
    expect(mostOnWhole(2)).toBeCloseTo(0.5, 6);
  });
});

describe('whole millimetres that end in 0 or 5', () => {
  it('have mean and variance of all spreads of the deviations over the sheet values, by simulation', () => {
    const random = new Random(8);
    const sheets = Array.from({ length: 40 }, () => Math.floor(random.uniform(0, 5)));
    const deviations = Array.from({ length: 40 }, () => Math.floor(random.uniform(0, 3)));
    const tableOf = (order: readonly number[]): number[] => {
      const table = Array.from({ length: 25 }, () => 0);
      sheets.forEach((sheet, i) => {
        const cell = 5 * sheet + (order[i] ?? 0);
        table[cell] = (table[cell] ?? 0) + 1;
      });
      return table;
    };
    let low = 0;
    let mean = 0;
    const trials = 4000;
    for (let trial = 0; trial < trials; trial++) {
      for (let i = deviations.length - 1; i > 0; i--) {
        const j = Math.floor(random.uniform(0, i + 1));
        [deviations[i], deviations[j]] = [deviations[j] ?? 0, deviations[i] ?? 0];
      }
      const found = fivesByChance(tableOf(deviations));
      expect(found).not.toBeNull();
      if (found === null) return;
      mean += (found.seen - found.expected) / trials;
      if (found.p < 0.05) low++;
    }
    expect(Math.abs(mean)).toBeLessThan(0.2);
    expect(low / trials).toBeGreaterThan(0.015);
    expect(low / trials).toBeLessThan(0.065);
  });

  it('are found where every reading ends so, and have no answer where one sheet value leaves no choice', () => {
    const table = Array.from({ length: 25 }, (_, cell) =>
      (Math.floor(cell / 5) + (cell % 5)) % 5 === 0 ? 8 : 0,
    );
    expect(fivesByChance(table)?.p).toBeLessThan(1e-6);
    expect(fivesByChance([10, 8, 6, 4, 2, ...Array.from({ length: 20 }, () => 0)])).toBeNull();
  });
});

describe('readings expected at the sheet value', () => {
  const normal = (sd: number, mean: number): number[] =>
    Array.from({ length: 11 }, (_, i) => {
      const centre = (i - 5) / 2;
      return 1000 * normalBetween((centre - 0.25 - mean) / sd, (centre + 0.25 - mean) / sd);
    });

  it.each([
    [0.9, 0],
    [1.3, 0.4],
    [2, -0.5],
  ])('are those of a normal density, sd %f around %f', (sd, mean) => {
    const found = smoothMiddle(normal(sd, mean));
    expect(Math.abs((found?.expected ?? NaN) / (found?.seen ?? NaN) - 1)).toBeLessThan(0.02);
  });

  it('are not moved by hands that read whole millimetres', () => {
    const bins = normal(1.2, 0).map((count, i) => count * (i % 2 === 1 ? 1.8 : 0.2));
    expect(Math.abs(smoothMiddle(bins)?.excess ?? NaN)).toBeLessThan(0.03);
  });

  it('are unknown where there are few readings', () => {
    expect(smoothMiddle(Array.from({ length: 11 }, () => 5))).toBeNull();
  });
});

describe('a ratio over jobs', () => {
  it('has the mean of equal jobs and its textbook standard error', () => {
    const values = [1, 2, 4, 5];
    const sum = values.map((value) => clusterOf(1, value)).reduce(addMoments, noMoments());
    const ratio = ratioOf(sum);
    expect(ratio?.value).toBeCloseTo(3, 12);
    // Sample variance 10 / 3, over four values.
    expect(ratio?.variance).toBeCloseTo(10 / 12, 12);
    expect(ratio?.df).toBe(3);
  });

  it('is unknown for two jobs', () => {
    expect(ratioOf(addMoments(clusterOf(1, 1), clusterOf(1, 2)))).toBeNull();
  });
});

describe('a hand against the others', () => {
  const calledDifferent = (spread: number): number => {
    const random = new Random(21);
    let called = 0;
    for (let shop = 0; shop < 4000; shop++) {
      const [own, ...others] = Array.from({ length: 7 }, () => ({
        value: random.normal(0, spread) + random.normal(0, 0.1),
        variance: 0.01,
        df: 40,
      }));
      const found = own && againstOthers(own, others, 0.15);
      if (found && 2 * Math.min(found.above, found.below) < 0.05) called++;
    }
    return called / 4000;
  };

  it('is called different in no more than one of twenty shops where hands differ as the prior has it or less', () => {
    expect(calledDifferent(0)).toBeLessThan(0.02);
    expect(calledDifferent(0.15)).toBeLessThan(0.06);
    expect(calledDifferent(0.15)).toBeGreaterThan(0.02);
  });

  it('is called different somewhat too often where hands differ nearly three times as much', () => {
    expect(calledDifferent(0.4)).toBeLessThan(0.12);
    expect(calledDifferent(0.4)).toBeGreaterThan(0.05);
  });

  /** Of 300 shops: a hand and five others of 80 rounds each, and perhaps a small one; how often p is below `level`. */
  const shopsWith = (rate: number, small: { n: number; x: number } | null, level: number): number => {
    const random = new Random(24);
    const rounds = (chance: number) => ({
      n: 80,
      x: Array.from({ length: 80 }, () => random.chance(chance)).filter(Boolean).length,
    });
    let below = 0;
    for (let shop = 0; shop < 300; shop++) {
      const others = Array.from({ length: 5 }, () => rounds(0.015));
      if (small !== null) others.push(small);
      const found = moreOften(rounds(rate), others, 0.5, 0.25);
      if (found !== null && found.p < level) below++;
    }
    return below / 300;
  };

  it.each([
    { n: 3, x: 0 },
    { n: 3, x: 1 },
    { n: 3, x: 2 },
    { n: 6, x: 3 },
  ])('with a habit of 20 in 100 rounds is not hidden by a small hand with $x of $n', (small) => {
    const without = shopsWith(0.2, null, 5e-4);
    expect(without).toBeGreaterThan(0.5);
    expect(shopsWith(0.2, small, 5e-4)).toBeGreaterThan(0.7 * without);
    expect(shopsWith(0.015, small, 0.05)).toBeLessThan(0.05);
  });

  it('stays as clear beside two hands of three jobs each, whose scatter is not known', () => {
    const random = new Random(5);
    const hand = (jobs: number, mean: number) => {
      const values = Array.from({ length: jobs }, () => mean + random.normal(0, 1));
      const sum = values.map((value) => clusterOf(1, value)).reduce(addMoments, noMoments());
      return ratioOf(sum) ?? { value: NaN, variance: NaN, df: NaN };
    };
    const found = [0, 0];
    const called = [0, 0];
    for (let shop = 0; shop < 1000; shop++) {
      const others = [40, 40, 40, 3, 3].map((jobs) => hand(jobs, random.normal(0, 0.15)));
      const [own, ordinary] = [hand(40, 1.2), hand(40, random.normal(0, 0.15))];
      [others.slice(0, 3), others].forEach((beside, i) => {
        if ((againstOthers(own, beside, 0.15)?.above ?? 1) < 5e-4) found[i] = (found[i] ?? 0) + 1;
        const { above = 1, below = 1 } = againstOthers(ordinary, beside, 0.15) ?? {};
        if (2 * Math.min(above, below) < 0.05) called[i] = (called[i] ?? 0) + 1;
      });
    }
    expect(found[1]).toBeGreaterThan(0.95 * (found[0] ?? 0));
    expect(Math.max(...called)).toBeLessThan(70);
  });

  it('has nothing to be compared with where there is no other', () => {
    expect(againstOthers({ value: 1, variance: 1, df: 9 }, [], 0.1)).toBeNull();
  });
});

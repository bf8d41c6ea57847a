import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { averageRunLength, conformity, cusum, decisionRisks, ewma, individuals } from '@/lib/stats';
import { randomAt } from '@/seed/random';

const number = (min: number, max: number) => fc.double({ min, max, noNaN: true });

describe('conformity', () => {
  it('the three parts add up, and only value and limits against the uncertainty matter', () => {
    fc.assert(
      fc.property(
        number(-8, 8),
        number(0.01, 4),
        number(0, 5),
        number(0.1, 10),
        (value, uncertainty, half, scale) => {
          const here = conformity({ value, uncertainty, lower: -half, upper: half });
          expect(here.probability + here.below + here.above).toBeCloseTo(1, 12);
          const there = conformity({
            value: -value * scale,
            uncertainty: uncertainty * scale,
            lower: -half * scale,
            upper: half * scale,
          });
          expect(there.probability).toBeCloseTo(here.probability, 10);
          expect(there.below).toBeCloseTo(here.above, 10);
        },
      ),
      { seed: 1 },
    );
  });
});

describe('decisionRisks', () => {
  const question = fc.record({
    processMean: number(-3, 3),
    processSd: number(0.05, 5),
    uncertainty: number(0.001, 5),
    lower: fc.option(number(-4, -0.5)),
    upper: fc.option(number(0.5, 4)),
    guard: number(-1, 1.5),
  });

  it('P(conforming) = P(accepted) − consumer + producer', () => {
    fc.assert(
      fc.property(question, (each) => {
        const { consumer, producer, conforming, accepted } = decisionRisks(each);
        expect(Math.abs(accepted - consumer + producer - conforming)).toBeLessThan(1e-11);
        for (const risk of [consumer, producer]) {
          expect(risk).toBeGreaterThanOrEqual(0);
          expect(risk).toBeLessThanOrEqual(1);
        }
      }),
      { seed: 2, numRuns: 300 },
    );
  });

  it('a wider guard band protects the consumer at the producer’s cost, and the risks mirror', () => {
    fc.assert(
      fc.property(question, number(0.01, 1), (each, more) => {
        const here = decisionRisks(each);
        const guarded = decisionRisks({ ...each, guard: each.guard + more });
        expect(guarded.consumer).toBeLessThanOrEqual(here.consumer + 1e-12);
        expect(guarded.producer).toBeGreaterThanOrEqual(here.producer - 1e-12);
        const { lower, upper } = each;
        const mirrored = decisionRisks({
          ...each,
          processMean: -each.processMean,
          lower: upper === null ? null : -upper,
          upper: lower === null ? null : -lower,
        });
        expect(mirrored.consumer).toBeCloseTo(here.consumer, 11);
      }),
      { seed: 3 },
    );
  });

  it('agree with drawing (200,000 pairs, four standard errors)', () => {
    const setting = { processMean: 0.4, processSd: 1.3, uncertainty: 0.6, lower: -2, upper: 2.5, guard: 0.3 };
    const random = randomAt(11);
    const draws = 200_000;
    let consumer = 0;
    let producer = 0;
    for (let i = 0; i < draws; i++) {
      const eta = setting.processMean + random.normal(setting.processSd);
      const y = eta + random.normal(setting.uncertainty);
      const within = eta >= setting.lower && eta <= setting.upper;
      const accepted = y >= setting.lower + setting.guard && y <= setting.upper - setting.guard;
      if (accepted && !within) consumer++;
      if (!accepted && within) producer++;
    }
    const found = decisionRisks(setting);
    for (const [share, risk] of [
      [consumer / draws, found.consumer],
      [producer / draws, found.producer],
    ] as const) {
      expect(Math.abs(share - risk)).toBeLessThan(4 * Math.sqrt((risk * (1 - risk)) / draws));
    }
  });
});

describe('averageRunLength', () => {
  it('is the same for a shift up and down, falls with the shift, and rises with the limit', () => {
    fc.assert(
      fc.property(number(0.05, 1), number(1.5, 3.5), number(0, 3), (lambda, L, shift) => {
        const at = (by: number, limit = L) => averageRunLength({ chart: 'ewma', lambda, L: limit }, by);
        expect(at(-shift) / at(shift)).toBeCloseTo(1, 9);
        expect(at(shift + 0.3)).toBeLessThan(at(shift));
        expect(at(shift, L + 0.2)).toBeGreaterThan(at(shift));
      }),
      { seed: 4, numRuns: 15 },
    );
    fc.assert(
      fc.property(number(0, 1), number(0.5, 6), number(0, 3), (k, h, shift) => {
        const at = (by: number, limit = h) => averageRunLength({ chart: 'cusum', k, h: limit }, by);
        expect(at(-shift) / at(shift)).toBeCloseTo(1, 9);
        expect(at(shift + 0.3)).toBeLessThan(at(shift));
        expect(at(shift, h + 0.5)).toBeGreaterThan(at(shift));
      }),
      { seed: 5, numRuns: 15 },
    );
  });

  it.each([0.5, 1.5])(
    'is what the charts do with drawn observations off by %d sd (four standard errors)',
    (shift) => {
      const random = randomAt(12, shift * 10);
      const runs = 2000;
      const length = 400;
      const lengths = { ewma: [] as number[], cusum: [] as number[] };
      for (let run = 0; run < runs; run++) {
        // A short limit, so that hardly any run is longer than what is drawn.
        const values = Array.from({ length }, () => shift + random.normal(1));
        const first = (alarm: number | undefined) => (alarm ?? length) + 1;
        lengths.ewma.push(first(firstAlarmOfEwma(values)));
        lengths.cusum.push(first(firstAlarmOfCusum(values)));
      }
      for (const [name, expected] of [
        ['ewma', averageRunLength({ chart: 'ewma', lambda: 0.2, L: 2.5 }, shift)],
        ['cusum', averageRunLength({ chart: 'cusum', k: 0.5, h: 3 }, shift)],
      ] as const) {
        const list = lengths[name];
        const mean = list.reduce((sum, value) => sum + value, 0) / runs;
        const sd = Math.sqrt(list.reduce((sum, value) => sum + (value - mean) ** 2, 0) / runs);
        expect(Math.abs(mean - expected)).toBeLessThan((4 * sd) / Math.sqrt(runs));
      }
    },
  );
});

/** The recursions written out, without the chart's own design, which would be done anew for every run. */
function firstAlarmOfEwma(values: number[]): number | undefined {
  const limit = 2.5 * Math.sqrt(0.2 / 1.8);
  let z = 0;
  const at = values.findIndex((value) => Math.abs((z = 0.2 * value + 0.8 * z)) > limit);
  return at < 0 ? undefined : at;
}

function firstAlarmOfCusum(values: number[]): number | undefined {
  let up = 0;
  let down = 0;
  const at = values.findIndex((value) => {
    up = Math.max(0, up + value - 0.5);
    down = Math.max(0, down - value - 0.5);
    return Math.max(up, down) > 3;
  });
  return at < 0 ? undefined : at;
}

describe('charts', () => {
  const values = fc.array(number(-5, 5), { minLength: 2, maxLength: 30 });

  it('alarm at the same places when unit and origin change', () => {
    fc.assert(
      fc.property(values, number(0.1, 50), fc.integer({ min: -500, max: 500 }), (list, sd, center) => {
        const moved = list.map((value) => center + sd * value);
        const options = { center, sd };
        const plain = { center: 0, sd: 1 };
        expect(ewma(moved, { ...options, L: 2.7 }).alarms).toEqual(ewma(list, { ...plain, L: 2.7 }).alarms);
        expect(cusum(moved, { ...options, h: 4 }).alarms).toEqual(cusum(list, { ...plain, h: 4 }).alarms);
        expect(individuals(moved).sd ?? NaN).toBeCloseTo(sd * (individuals(list).sd ?? NaN), 8);
      }),
      { seed: 6, numRuns: 30 },
    );
  });

  it('the sides of a CUSUM change places with the sign', () => {
    fc.assert(
      fc.property(values, (list) => {
        const here = cusum(list, { center: 0, sd: 1, h: 4 });
        const there = cusum(
          list.map((value) => -value),
          { center: 0, sd: 1, h: 4 },
        );
        expect(there.upper).toEqual(here.lower);
      }),
      { seed: 7, numRuns: 30 },
    );
  });
});

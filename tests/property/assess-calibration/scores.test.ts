import fc from 'fast-check';
import { expect, it } from 'vitest';
import { brierScore, calibrationError, type Foretold, reliability } from '@/lib/assess/calibration';
import { CAUSES, type Cause } from '@/lib/measure/types';
import { Random } from '@/tests/simulation/random';

const weights = fc.array(fc.double({ min: 0.001, max: 1, noNaN: true }), { minLength: 4, maxLength: 4 });

function normalised(values: readonly number[]): Record<Cause, number> {
  const total = values.reduce((sum, value) => sum + value, 0);
  return Object.fromEntries(CAUSES.map((cause, c) => [cause, (values[c] ?? 0) / total])) as Record<
    Cause,
    number
  >;
}

const heights: fc.Arbitrary<Foretold[]> = fc.array(
  fc.record({
    p: weights.map(normalised),
    proved: fc.option(fc.constantFrom(...CAUSES)),
    round: fc.integer({ min: 0, max: 20 }).map(String),
  }),
  { maxLength: 60 },
);

it('every height is in one tenth, and shares lie within their intervals', () => {
  fc.assert(
    fc.property(heights, fc.constantFrom(...CAUSES), (all, cause) => {
      const bins = reliability(all, cause);
      const proved = all.filter((height) => height.proved !== null);
      expect(bins.reduce((sum, bin) => sum + bin.heights, 0)).toBe(proved.length);
      expect(bins.reduce((sum, bin) => sum + bin.open, 0)).toBe(all.length - proved.length);
      expect(bins.reduce((sum, bin) => sum + bin.proved, 0)).toBe(
        proved.filter((height) => height.proved === cause).length,
      );
      for (const { low, high, said, share, interval } of bins) {
        if (said === null || share === null) continue;
        expect(said).toBeGreaterThanOrEqual(low - 1e-12);
        expect(said).toBeLessThanOrEqual(high + 1e-12);
        expect(interval.low ?? 1).toBeLessThanOrEqual(share + 1e-12);
        expect(interval.high ?? 0).toBeGreaterThanOrEqual(share - 1e-12);
      }
    }),
  );
});

it('the score over four causes is the sum of the scores of each, and does not mind the order', () => {
  fc.assert(
    fc.property(heights, (all) => {
      const whole = brierScore(all);
      if (whole.score === null) return;
      const parts = CAUSES.reduce((sum, cause) => sum + (brierScore(all, cause).score ?? 0), 0);
      expect(whole.score).toBeCloseTo(parts, 10);
      const back = brierScore(all.toReversed());
      expect(back.score).toBeCloseTo(whole.score, 10);
      expect(back.low ?? 0).toBeCloseTo(whole.low ?? 0, 10);
    }),
  );
});

it('where what is said is right, tenths prove so, the score is what it should be, and its interval holds it', () => {
  const random = new Random(71);
  let held = 0;
  const trials = 60;
  for (let trial = 0; trial < trials; trial++) {
    const all = Array.from({ length: 600 }, (_, i): Foretold => {
      const p = normalised(CAUSES.map(() => random.uniform() ** 4));
      return {
        p,
        proved: CAUSES[random.weighted(CAUSES.map((cause) => p[cause]))] ?? null,
        round: String(i),
      };
    });
    // Ten tenths of some 60 heights: a mean distance of 0.04 is what chance leaves, 0.09 is not.
    expect(calibrationError(reliability(all, 'gauge'))).toBeLessThan(0.09);
    const { low, high, ifRight } = brierScore(all);
    if ((low ?? 9) <= (ifRight ?? 0) && (high ?? 0) >= (ifRight ?? 0)) held++;
  }
  // 57 of 60 expected; 51 would happen by chance in fewer than 1 of 100 such tests.
  expect(held).toBeGreaterThanOrEqual(52);
});

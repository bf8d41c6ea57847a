import { beforeAll, describe, expect, it } from 'vitest';
import { learn } from '@/lib/assess';
import { calibrationError, type Foretold, foretoldHeights, reliability } from '@/lib/assess/calibration';
import type { Cause } from '@/lib/measure/types';
import { simulateShop } from '@/tests/simulation/shop';

type Known = Foretold & { truth: Cause | undefined };

/** A simulated shop of 120 jobs: what was foretold of heights that were hung again, what was proved, and the truth. */
let heights: Known[] = [];

beforeAll(() => {
  const shop = simulateShop({ seed: 5, jobs: 120 });
  const learned = learn(shop.jobs);
  heights = shop.jobs.flatMap((job) =>
    job.rounds.flatMap((round) => {
      const name = `${round.job} ${round.stage} ${round.attempt}`;
      return foretoldHeights(round, learned).map(({ setup, side, p, proved }) => ({
        ...{ p, proved, round: name },
        truth: shop.truth.get(`${name} ${setup} ${side}`)?.cause,
      }));
    }),
  );
}, 240_000);

describe('on a simulated shop', () => {
  it('what a second hanging proves is the truth 95 times in 100', () => {
    const proved = heights.filter((height) => height.proved !== null);
    expect(proved.length).toBeGreaterThan(200);
    expect(proved.filter((height) => height.proved === height.truth).length / proved.length).toBeGreaterThan(
      0.95,
    );
  });

  it.each(['gauge', 'body', 'neither'] as const)(
    'the probabilities of %s come true within 6 in 100',
    (cause) => {
      // Against the truth, heights that the check left open included. Some 500 heights: chance leaves about 0.03.
      const error = calibrationError(
        reliability(
          heights.map(({ p, round, truth }) => ({ p, round, proved: truth ?? null })),
          cause,
        ),
      );
      expect(error).toBeLessThan(0.06);
    },
  );

  it.each(['gauge', 'body'] as const)('and by what was proved within 7 in 100: %s', (cause) => {
    expect(calibrationError(reliability(heights, cause))).toBeLessThan(0.07);
  });
});

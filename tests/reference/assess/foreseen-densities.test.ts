import fc from 'fast-check';
import { expect, it } from 'vitest';
import { foresee, stateAhead } from '@/lib/assess/cause/foresee';
import { frameRound } from '@/lib/assess/cause/frame';
import { modelRound } from '@/lib/assess/cause/model';
import {
  BROAD,
  BROAD_DIFFERENCE,
  C_BOTH,
  type Coming,
  FREE_BOTH,
  FREE_SIDE,
  LEVER_A,
  LEVER_B,
  mostOf,
  NONE,
  OFF_BOTH,
  OFF_LEFT,
  OFF_RIGHT,
  outlookOf,
  V_LEFT,
  V_RIGHT,
  Y_LEFT,
  Y_RIGHT,
} from '@/lib/assess/cause/outlook';
import { knownShop } from '@/tests/simulation/known';
import { roundOf } from '@/tests/simulation/round';
import { expectAbsolute } from '../stats/closeness';
import { logNormal } from './gaussian';

/*
 * What one setup is foreseen to count for, written out: the greatest of four densities of its two readings, each as a
 * normal density times its prior. The search leaves most of the four out by bounds; none may be left out that counts.
 */
const levers: Coming[] = [0, 1800, 4200].flatMap((at) => {
  const frame = frameRound(
    roundOf({
      hung: [
        { at: 1100, zero: true, left: 0, right: 0 },
        { at: 2600, zero: true, left: 0, right: 0 },
        { at, left: 0, right: 0 },
      ],
    }),
  );
  if ('why' in frame) throw new Error(frame.why);
  return outlookOf(modelRound(frame, knownShop()))[0] ?? [];
});

/** Readings and datum errors, mm, and a root of the errors' covariance. */
const states = fc.record({
  place: fc.integer({ min: 0, max: levers.length - 1 }),
  y: fc.tuple(fc.double({ min: -40, max: 40, noNaN: true }), fc.double({ min: -40, max: 40, noNaN: true })),
  mean: fc.array(fc.double({ min: -25, max: 25, noNaN: true }), { minLength: 4, maxLength: 4 }),
  root: fc.array(fc.double({ min: -3, max: 3, noNaN: true }), { minLength: 16, maxLength: 16 }),
});

it('what is foreseen of a setup is the greatest of its four densities', () => {
  const ways = new Set<string>();
  fc.assert(
    fc.property(states, ({ place, y, mean, root }) => {
      const coming = levers[place];
      if (!coming) throw new Error('There is a setup at each place.');
      const numbers = Float64Array.from(coming.numbers);
      numbers[Y_LEFT] = y[0];
      numbers[Y_RIGHT] = y[1];
      const one: Coming = { ...coming, numbers };
      const at = (index: number): number => numbers[index] ?? NaN;
      const covariance = Array.from({ length: 4 }, (_, i) =>
        Array.from({ length: 4 }, (__, j) =>
          [0, 1, 2, 3].reduce((sum, k) => sum + (root[4 * i + k] ?? NaN) * (root[4 * j + k] ?? NaN), 0),
        ),
      );
      const lever = [at(LEVER_A), 0, at(LEVER_B), 0];
      const carried = (side: number, other: number): number =>
        [0, 2].reduce(
          (sum, i) =>
            sum +
            [0, 2].reduce(
              (inner, j) =>
                inner + (lever[i] ?? NaN) * (lever[j] ?? NaN) * (covariance[i + side]?.[j + other] ?? NaN),
              0,
            ),
          0,
        );
      const r = [0, 1].map(
        (side) =>
          (y[side] ?? NaN) + at(LEVER_A) * (mean[side] ?? NaN) + at(LEVER_B) * (mean[2 + side] ?? NaN),
      );
      const [rL = NaN, rR = NaN] = r;
      const vL = at(V_LEFT) + carried(0, 0);
      const vR = at(V_RIGHT) + carried(1, 1);
      const c = at(C_BOTH) + carried(0, 1);
      const alone = (residual: number, variance: number): number => logNormal([residual], [0], [[variance]]);
      const own = BROAD + BROAD_DIFFERENCE;
      const four = {
        none:
          at(NONE) +
          logNormal(
            [rL, rR],
            [0, 0],
            [
              [vL, c],
              [c, vR],
            ],
          ),
        left: at(OFF_LEFT) + Math.max(FREE_SIDE, alone(rL, vL + BROAD)) + alone(rR, vR),
        right: at(OFF_RIGHT) + Math.max(FREE_SIDE, alone(rR, vR + BROAD)) + alone(rL, vL),
        both:
          at(OFF_BOTH) +
          Math.max(
            FREE_BOTH,
            logNormal(
              [rL, rR],
              [0, 0],
              [
                [vL + own, c + BROAD],
                [c + BROAD, vR + own],
              ],
            ),
          ),
      };
      const likeliest = Math.max(...Object.values(four));
      for (const [way, value] of Object.entries(four)) if (value === likeliest) ways.add(way);
      const state = stateAhead(4);
      state.mean.set(mean);
      state.covariance.set(covariance.flat());
      const found = foresee([one], 4, -1, mostOf([one]), -Infinity);
      expectAbsolute(found.after, likeliest, 1e-9 * Math.max(1, Math.abs(likeliest)));
      expectAbsolute(found.all, likeliest, 1e-9 * Math.max(1, Math.abs(likeliest)));
    }),
    { seed: 5, numRuns: 1000 },
  );
  expect([...ways].sort()).toEqual(['both', 'left', 'none', 'right']);
});

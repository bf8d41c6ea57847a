import { describe, it } from 'vitest';
import { frameRound } from '@/lib/assess/cause/frame';
import type { Learned, Pattern } from '@/lib/assess/cause/learned';
import { modelRound } from '@/lib/assess/cause/model';
import { search } from '@/lib/assess/cause/search';
import { SIDE_DIFFERENCE, SIZE_BANDS, WIDE_BAND } from '@/lib/assess/cause/sizes';
import { knownShop } from '@/tests/simulation/known';
import { roundOf } from '@/tests/simulation/round';
import { expectAbsolute, expectRelative } from '../stats/closeness';

/*
 * One station read on both sides once, between two zero stations that are known to be sound and set ordinarily:
 * where its body is (two numbers) and how its gauge was set (two numbers) are integrated over a grid, with every
 * mixture evaluated as a density, and no hypothesis named. Sums over an even grid of normal densities that are
 * wide beside its step are exact to far more digits than are asked for (Poisson's summation formula).
 */
const STEP = 0.4;
const HALF = 80;
const SIZE = 2 * HALF + 1;
const SCATTER = 0.7;
const SETTING = 1;
const READING = 0.6;
const COMMON = 0.5;
const SIGNS = [-1, 1];
const NEVER = 1e-15;

const learned: Learned = knownShop({
  technicians: {
    T1: { reading: READING, setting: SETTING, missetRate: 0.1, biasSe: 0.2 },
    T0: { setting: 0.4, missetRate: 0 },
  },
  gauges: { G3: { biasSe: 0.1 } },
});
learned.common = COMMON;
learned.bodies.before.scatter = SCATTER;
for (const { patterns } of learned.bodies.before.impacts)
  patterns.center = { none: 1, left: NEVER, right: NEVER, both: NEVER, opposed: NEVER };
// Only sizes that are not known in advance, so that the grid need not reach a hundred millimetres.
learned.missets = { ...learned.missets, both: 0.5, left: 0.3, right: 0.2 };
for (const slip of Object.keys(learned.missets) as (keyof Learned['missets'])[])
  if (!['both', 'left', 'right'].includes(slip)) learned.missets[slip] = 0;

/** Density of a bivariate normal distribution. */
function bivariate(x: number, y: number, vx: number, vy: number, c: number): number {
  const det = vx * vy - c * c;
  return Math.exp((-0.5 * (vy * x * x - 2 * c * x * y + vx * y * y)) / det) / (2 * Math.PI * Math.sqrt(det));
}

type Density = (left: number, right: number) => number;

/** Density of what a size of unknown sign adds to a pair of values with these variances, on the sides `on`. */
function sized(
  on: readonly [number, number],
  variance: number,
  shared: number,
  differs: boolean,
  bands: readonly { centre: number; sd: number; weight: number }[],
): Density {
  return (left, right) => {
    let sum = 0;
    for (const { centre, sd, weight } of bands) {
      const extra = differs && on[0] * on[1] !== 0 ? (SIDE_DIFFERENCE * centre) ** 2 : 0;
      for (const sign of SIGNS) {
        sum +=
          (weight / 2) *
          bivariate(
            left - sign * centre * on[0],
            right - sign * centre * on[1],
            variance + (sd ** 2 + extra) * Math.abs(on[0]),
            variance + (sd ** 2 + extra) * Math.abs(on[1]),
            shared + sd ** 2 * on[0] * on[1],
          );
      }
    }
    return sum;
  };
}

const LEFT = [1, 0] as const;
const RIGHT = [0, 1] as const;
const BOTH = [1, 1] as const;
const OPPOSED = [1, -1] as const;
const bands = (weights: readonly number[]) =>
  SIZE_BANDS.map((band, i) => ({ ...band, weight: weights[i] ?? 0 }));
const front = (pattern: Pattern): number =>
  learned.bodies.before.impacts.reduce(
    (sum, { share, patterns }) => sum + share * patterns.front[pattern],
    0,
  );

/** Densities of the body: sound, damaged by the learned sizes, damaged by the one wide band that meets a mis-set. */
const sound: Density = (l, r) => front('none') * bivariate(l, r, SCATTER ** 2, SCATTER ** 2, 0);
const damaged = (weights: readonly { centre: number; sd: number; weight: number }[]): Density => {
  const kinds = ([LEFT, RIGHT, BOTH, OPPOSED] as const).map((on) =>
    sized(on, SCATTER ** 2, 0, true, weights),
  );
  const rates = [front('left'), front('right'), front('both'), front('opposed')];
  return (l, r) => kinds.reduce((sum, density, i) => sum + (rates[i] ?? 0) * density(l, r), 0);
};
const fine = damaged(bands(learned.damageSizes));
const wide = damaged([{ ...WIDE_BAND, weight: 1 }]);

/** Densities of the setting: ordinary, and mis-set by the learned sizes. */
const variance = SETTING ** 2;
const shared = COMMON * variance;
const ordinary: Density = (l, r) => 0.9 * bivariate(l, r, variance, variance, shared);
const misset: Density = (() => {
  const kinds = ([BOTH, LEFT, RIGHT] as const).map((on) =>
    sized(on, variance, shared, false, bands(learned.missetSizes)),
  );
  const shares = [0.5, 0.3, 0.2];
  return (l, r) => 0.1 * kinds.reduce((sum, kind, i) => sum + (shares[i] ?? 0) * kind(l, r), 0);
})();

const grid = Array.from({ length: SIZE }, (_, i) => (i - HALF) * STEP);

function tabulated(density: Density): Float64Array {
  const table = new Float64Array(SIZE * SIZE);
  grid.forEach((l, i) => grid.forEach((r, j) => (table[i * SIZE + j] = density(l, r))));
  return table;
}

/** What separates a reading from body plus setting: the datum at 0 mm by the lever, unknown biases, noise. */
const X = { a: 1000, b: 2500, front: 250 };
const wa = (X.b - X.front) / (X.b - X.a);
const wb = (X.front - X.a) / (X.b - X.a);
const lever = wa ** 2 + wb ** 2;
const datumVariance = lever * (0.4 ** 2 + SCATTER ** 2);
const biasVariance = 0.2 ** 2 + 0.1 ** 2;
const n: [number, number] = [2, 1];

/** ∫ density(m) N(t − m; rest) dm for every grid point t. */
function smoothed(table: Float64Array): Float64Array {
  const vL = datumVariance + biasVariance + READING ** 2 / n[0];
  const vR = datumVariance + biasVariance + READING ** 2 / n[1];
  const c = biasVariance + lever * COMMON * 0.4 ** 2;
  const reach = Math.ceil((7 * Math.sqrt(Math.max(vL, vR))) / STEP);
  const kernel: [number, number, number][] = [];
  for (let i = -reach; i <= reach; i++)
    for (let j = -reach; j <= reach; j++) {
      const value = bivariate(i * STEP, j * STEP, vL, vR, c) * STEP ** 2;
      if (value > 1e-14) kernel.push([i, j, value]);
    }
  const out = new Float64Array(SIZE * SIZE);
  for (let i = 0; i < SIZE; i++) {
    for (let j = 0; j < SIZE; j++) {
      const value = table[i * SIZE + j] ?? 0;
      if (value < 1e-16) continue;
      for (const [di, dj, weight] of kernel) {
        const [p, q] = [i + di, j + dj];
        if (p < 0 || q < 0 || p >= SIZE || q >= SIZE) continue;
        out[p * SIZE + q] = (out[p * SIZE + q] ?? 0) + weight * value;
      }
    }
  }
  return out;
}

const settings = {
  ordinary: smoothed(tabulated(ordinary)),
  misset: smoothed(tabulated(misset)),
};
const bodies = { sound: tabulated(sound), fine: tabulated(fine), wide: tabulated(wide) };

/** ∫ body(b) settings(y − b) db. */
function density(body: Float64Array, setting: Float64Array, y: readonly [number, number]): number {
  const [yi, yj] = [Math.round(y[0] / STEP), Math.round(y[1] / STEP)];
  let sum = 0;
  for (let i = 0; i < SIZE; i++) {
    for (let j = 0; j < SIZE; j++) {
      const [p, q] = [yi - (i - HALF) + HALF, yj - (j - HALF) + HALF];
      if (p < 0 || q < 0 || p >= SIZE || q >= SIZE) continue;
      sum += (body[i * SIZE + j] ?? 0) * (setting[p * SIZE + q] ?? 0);
    }
  }
  return sum * STEP ** 2;
}

const readings: [number, number][] = [
  [0, 0.4],
  [6.4, 6],
  [7.2, 0.8],
  [-3.2, -2.8],
  [12, -9.6],
  [3.2, 9.2],
];

const hang = (y: [number, number]) =>
  roundOf({
    hung: [
      { at: X.a, zero: true, left: 0, right: 0, technician: 'T0', gauge: 'G1' },
      { at: X.b, zero: true, left: 0, right: 0, technician: 'T0', gauge: 'G2' },
      { at: X.front, left: y[0], right: y[1], n, gauge: 'G3', section: 'front' },
    ],
  });

describe('one station, both sides, against brute-force integration over body and setting', () => {
  it.each(readings)('reads %d and %d mm', (left, right) => {
    const y: [number, number] = [left, right];
    const round = hang(y);
    const frame = frameRound(round);
    if ('why' in frame) throw new Error(frame.why);
    const found = search(modelRound(frame, learned), { depth: 60, breadth: 1_000_000, share: 1 });
    const parts = {
      nothing: density(bodies.sound, settings.ordinary, y),
      gauge: density(bodies.sound, settings.misset, y),
      body: density(bodies.fine, settings.ordinary, y),
      two: density(bodies.wide, settings.misset, y),
    };
    const total = parts.nothing + parts.gauge + parts.body + parts.two;
    expectRelative(Math.exp(found.logEvidence), total, 1e-6);
    // What is wrong, whatever its size: the sums over the hypotheses of each kind.
    const model = modelRound(frame, learned);
    const share = { nothing: 0, gauge: 0, body: 0, two: 0 };
    for (const { weight, explanation } of found.explanations) {
      const hurt = model.bodies[explanation.bodies[2] ?? 0]?.pattern !== 'none';
      const set = model.steps[0]?.settings[explanation.settings[0] ?? 0]?.misset !== 'ordinary';
      share[hurt ? (set ? 'two' : 'body') : set ? 'gauge' : 'nothing'] += weight;
    }
    for (const kind of ['nothing', 'gauge', 'body', 'two'] as const)
      expectAbsolute(share[kind], parts[kind] / total, 1e-6, kind);
  });
});

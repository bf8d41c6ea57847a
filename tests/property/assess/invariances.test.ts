import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { type JudgedRound, judgeRound } from '@/lib/assess/cause/judge';
import type { Learned } from '@/lib/assess/cause/learned';
import type { SearchEffort } from '@/lib/assess/cause/search';
import type { Round } from '@/lib/measure/types';
import { knownShop } from '@/tests/simulation/known';
import { type Hung, roundOf } from '@/tests/simulation/round';
import { anyRound, difference, mirrored } from './rounds';

const shop = knownShop({ technicians: { T1: {}, T2: { setting: 1.1, bias: 0.4 } } });
const RUNS = { seed: 20_240, numRuns: 14 };

function judged(round: Round, learned: Learned = shop, effort?: SearchEffort): JudgedRound {
  const found = judgeRound(round, learned, effort);
  if ('why' in found) throw new Error(found.why);
  return found;
}

/** Sections said outright, so that they stay with their points when the vehicle is turned round. */
const sectioned = (hung: readonly Hung[]): Hung[] =>
  hung.map((one) => ({
    ...one,
    section: one.zero === true ? 'center' : one.at < 1850 ? 'front' : 'rear',
  }));

describe('the verdicts of a round', () => {
  it('are probabilities that sum to one, and two parts that make up the deviation', () => {
    fc.assert(
      fc.property(anyRound(), (parts) => {
        const round = roundOf(parts);
        const { heights, pZeroMisset, found } = judged(round);
        expect(heights.length).toBe(round.setups.flatMap((setup) => setup.observations).length);
        expect(pZeroMisset).toBeGreaterThanOrEqual(0);
        expect(pZeroMisset).toBeLessThanOrEqual(1);
        expect(found.leftOut).toBeGreaterThanOrEqual(0);
        expect(found.leftOut).toBeLessThanOrEqual(1);
        for (const height of heights) {
          const p = Object.values(height.p);
          for (const one of p) {
            expect(one).toBeGreaterThanOrEqual(0);
            expect(one).toBeLessThanOrEqual(1);
          }
          expect(p.reduce((a, b) => a + b, 0)).toBeCloseTo(1, 9);
          // What remains between the parts and the reading is bias and noise.
          const bias = shop.technicians[height.technician]?.bias ?? 0;
          if (!height.zero)
            expect(Math.abs(height.misset + height.body - (height.deviation - bias))).toBeLessThan(2);
        }
      }),
      RUNS,
    );
  });

  it('mirror when left and right are exchanged', () => {
    fc.assert(
      fc.property(anyRound(), (parts) => {
        const found = difference(judged(roundOf(parts)).heights, judged(mirrored(parts)).heights, true);
        // What is let go on the way hangs on the order of the sides where two are all but as likely.
        expect(found.probability).toBeLessThan(5e-3);
        expect(found.mm).toBeLessThan(0.05);
      }),
      RUNS,
    );
  });

  it('do not depend on where along the vehicle the stations are counted from', () => {
    fc.assert(
      fc.property(anyRound(), fc.integer({ min: -5000, max: 5000 }), (parts, origin) => {
        const moved = { ...parts, hung: parts.hung.map((one) => ({ ...one, at: one.at + origin })) };
        const found = difference(judged(roundOf(parts)).heights, judged(roundOf(moved)).heights);
        expect(found.probability).toBeLessThan(1e-9);
        expect(found.mm).toBeLessThan(1e-9);
      }),
      RUNS,
    );
  });

  it('do not depend on which end is the front, where front and rear are damaged alike', () => {
    fc.assert(
      fc.property(anyRound({ stage: 'after' }), (parts) => {
        const hung = sectioned(parts.hung);
        const there = roundOf({ ...parts, hung });
        const back = roundOf({ ...parts, hung: hung.map((one) => ({ ...one, at: 4000 - one.at })) });
        const found = difference(judged(there).heights, judged(back).heights);
        expect(found.probability).toBeLessThan(0.01);
      }),
      RUNS,
    );
  });

  it('do not depend on the order in which different stations were measured', () => {
    fc.assert(
      fc.property(anyRound({ rehangs: false, stations: { min: 2, max: 3 } }), (parts) => {
        const named = parts.hung.map((one, i) => ({ ...one, label: `s${i}` }));
        const turned = [...named.slice(0, 2), ...named.slice(2).reverse()];
        const found = difference(
          judged(roundOf({ ...parts, hung: named })).heights,
          judged(roundOf({ ...parts, hung: turned })).heights,
        );
        expect(found.probability).toBeLessThan(1e-9);
        expect(found.mm).toBeLessThan(1e-9);
      }),
      RUNS,
    );
  });

  it('depend on the clearance through its own slips alone', () => {
    // The deviations are the same with every clearance. What changes is the size of a slip that is made of it:
    // left out, added twice, or two digits of the height exchanged.
    const without: Learned = structuredClone(shop);
    without.missets['clearance-omitted'] = 0;
    without.missets['clearance-twice'] = 0;
    without.missets['digits-exchanged'] = 0;
    fc.assert(
      fc.property(anyRound(), fc.constantFrom(0, 37, 80, 150), (parts, clearance) => {
        const found = difference(
          judged(roundOf(parts), without).heights,
          judged(roundOf({ ...parts, clearance }), without).heights,
        );
        expect(found.probability).toBe(0);
        expect(found.mm).toBe(0);
      }),
      RUNS,
    );
  });

  it('do not depend on what the zero gauges themselves read', () => {
    fc.assert(
      fc.property(anyRound(), fc.integer({ min: -30, max: 30 }), (parts, tenths) => {
        const other = parts.hung.map((one) =>
          one.zero === true ? { ...one, left: tenths / 10, right: -tenths / 10 } : one,
        );
        const found = difference(
          judged(roundOf(parts)).heights,
          judged(roundOf({ ...parts, hung: other })).heights,
        );
        expect(found.probability).toBe(0);
      }),
      { ...RUNS, numRuns: 8 },
    );
  });

  it('do not depend on the order of two setups at one station', () => {
    // Deep, since what is left out on the way depends on the order; in a verdict that may be some hundredths.
    const deep: SearchEffort = { depth: 16, breadth: 20_000, share: 1 };
    fc.assert(
      fc.property(anyRound({ stations: { min: 1, max: 1 }, missingSides: false }), (parts) => {
        fc.pre(parts.hung.length === 4);
        const named = parts.hung.map((one, i) => ({ ...one, label: `s${i}` }));
        const turned = [...named.slice(0, 2), ...named.slice(2).reverse()];
        const found = difference(
          judged(roundOf({ ...parts, hung: named }), shop, deep).heights,
          judged(roundOf({ ...parts, hung: turned }), shop, deep).heights,
        );
        expect(found.probability).toBeLessThan(0.01);
      }),
      { ...RUNS, numRuns: 5 },
    );
  });
});

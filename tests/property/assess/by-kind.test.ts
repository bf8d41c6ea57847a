import fc from 'fast-check';
import { expect, it } from 'vitest';
import { judgeRound, ONE_BY_ONE, VERDICT_EFFORT } from '@/lib/assess/cause/judge';
import type { SearchEffort } from '@/lib/assess/cause/search';
import { CAUSES, type Round } from '@/lib/measure/types';
import { knownShop } from '@/tests/simulation/known';
import { roundOf } from '@/tests/simulation/round';
import { anyRound } from './rounds';

const shop = knownShop({ technicians: { T1: {}, T2: { setting: 0.5, bias: 0.4 } } });

/** Explanations one by one, far wider than any verdict’s search. */
const DEEP: SearchEffort = { depth: 12, breadth: 1500, share: 0.9999 };

const probabilities = (round: Round, effort: SearchEffort): number[][] => {
  const judged = judgeRound(round, shop, effort);
  if ('why' in judged) throw new Error('These rounds can be judged.');
  return judged.heights.map(({ p }) => CAUSES.map((cause) => p[cause]));
};

/** By height, how far the probability of a class is off at most; going up. */
const distances = (found: readonly number[][], deep: readonly number[][]): number[] =>
  found.map((p, h) => Math.max(...p.map((value, c) => Math.abs(value - (deep[h]?.[c] ?? NaN)))));

it('explanations let go by kind leave the probabilities as near a far deeper search as letting go one by one', () => {
  const rounds = fc
    .sample(anyRound({ stations: { min: 1, max: 3 } }), { seed: 7, numRuns: 16 })
    .map((parts) => roundOf(parts));
  const byKind: number[] = [];
  const oneByOne: number[] = [];
  for (const round of rounds) {
    const deep = probabilities(round, DEEP);
    byKind.push(...distances(probabilities(round, VERDICT_EFFORT), deep));
    oneByOne.push(...distances(probabilities(round, ONE_BY_ONE), deep));
  }
  const mean = (all: readonly number[]): number => all.reduce((sum, one) => sum + one, 0) / all.length;
  const nineInTen = (all: readonly number[]): number =>
    [...all].sort((a, b) => a - b)[Math.floor(0.9 * all.length)] ?? NaN;
  expect(mean(byKind)).toBeLessThan(0.001 + 1.5 * mean(oneByOne));
  expect(nineInTen(byKind)).toBeLessThan(0.02);
  // Neither is the deep search by another name.
  expect(Math.min(mean(byKind), mean(oneByOne))).toBeGreaterThan(1e-5);
});

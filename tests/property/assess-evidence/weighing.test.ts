import fc from 'fast-check';
import { expect, it } from 'vitest';
import { judgeRound, type JudgedRound, ONE_BY_ONE } from '@/lib/assess/cause/judge';
import { evidenceOf } from '@/lib/assess/evidence';
import { chainOf } from '@/lib/assess/evidence/chain';
import { groupsOf } from '@/lib/assess/evidence/hypotheses';
import { CAUSES, type Round } from '@/lib/measure/types';
import { knownShop } from '@/tests/simulation/known';
import { type Hung, roundOf } from '@/tests/simulation/round';

const learned = knownShop({ technicians: { T1: {}, T2: { setting: 1.4, bias: 0.6 } } });

const deviation = fc.oneof(
  fc.double({ min: -1.5, max: 1.5, noNaN: true }),
  fc.double({ min: -14, max: 14, noNaN: true }),
);

/** Rounds of three to five stations: missing sides, second hangings, a zero gauge hung again, lengths, causes. */
const rounds: fc.Arbitrary<Round> = fc
  .record({
    front: fc.tuple(deviation, deviation),
    rear: fc.tuple(deviation, deviation),
    more: fc.option(fc.tuple(deviation, deviation)),
    again: fc.option(fc.tuple(deviation, deviation)),
    zeroAgain: fc.boolean(),
    oneSide: fc.boolean(),
    length: fc.option(deviation),
    cause: fc.option(fc.constantFrom(...CAUSES)),
    attempt: fc.constantFrom(1, 2),
  })
  .map(({ front, rear, more, again, zeroAgain, oneSide, length, cause, attempt }) => {
    const zero = { at: 1100, zero: true, left: 0.2, right: -0.1 };
    const at = (place: number, [left, right]: [number, number], technician: string): Hung => ({
      ...{ at: place, left, section: place < 1100 ? 'front' : 'rear', technician },
      ...(oneSide && place === 3200 ? {} : { right }),
    });
    const first = at(0, front, 'T1');
    return roundOf({
      stage: 'after',
      attempt,
      hung: [
        zero,
        { at: 2600, zero: true, left: 0.1, right: 0 },
        cause === null ? first : { ...first, cause },
        at(3200, rear, 'T2'),
        ...(more === null ? [] : [at(3800, more, 'T1')]),
        ...(zeroAgain ? [{ ...zero, left: 0.1 }, at(3200, rear, 'T2')] : []),
        ...(again === null ? [] : [at(0, again, 'T2')]),
      ],
      lengths: length === null ? [] : [{ point: 'A-C', deviation: length }],
    });
  });

function judged(round: Round): JudgedRound {
  const found = judgeRound(round, learned, ONE_BY_ONE);
  if ('why' in found) throw new Error(found.why);
  return found;
}

const total = ({ prior, heights, lengths, rechecks }: ReturnType<typeof chainOf>): number =>
  prior +
  rechecks +
  lengths.reduce((sum, value) => sum + value, 0) +
  heights.reduce((sum, [left, right]) => sum + left + right, 0);

it('the terms of an explanation sum to the weight that the search has found', () => {
  fc.assert(
    fc.property(rounds, (round) => {
      const { model, found } = judged(round);
      const [first] = found.explanations;
      if (!first) return;
      const constant = total(chainOf(model, first.explanation)) - Math.log(first.weight);
      for (const { weight, explanation } of found.explanations.slice(0, 40)) {
        const chain = chainOf(model, explanation);
        // Without what re-checks add, it is the search's own ln of prior times marginal likelihood.
        expect(total(chain) - chain.rechecks).toBeCloseTo(explanation.logWeight, 7);
        expect(total(chain) - Math.log(weight)).toBeCloseTo(constant, 7);
      }
    }),
    { numRuns: 40, seed: 4 },
  );
});

it('hypotheses and what is beside them sum to one, the likeliest first', () => {
  fc.assert(
    fc.property(rounds, (round) => {
      const found = evidenceOf(round, learned);
      if ('why' in found) throw new Error(found.why);
      const p = found.hypotheses.map(({ probability }) => probability);
      expect(p.reduce((sum, value) => sum + value, found.rest)).toBeCloseTo(1, 12);
      expect([...p].sort((a, b) => b - a)).toEqual(p);
      const groups = groupsOf(judged(round));
      expect(groups.reduce((sum, { probability }) => sum + probability, 0)).toBeCloseTo(1, 12);
      for (const { members } of groups)
        expect(members.reduce((sum, { share }) => sum + share, 0)).toBeCloseTo(1, 12);
    }),
    { numRuns: 30, seed: 5 },
  );
});

it('the pieces of evidence add up to the difference of the two hypotheses’ evidences', () => {
  fc.assert(
    fc.property(rounds, (round) => {
      const found = evidenceOf(round, learned);
      if ('why' in found) throw new Error(found.why);
      const [first, second] = found.hypotheses;
      if (!first || !second) {
        expect(found.weighing).toEqual([]);
        return;
      }
      const sum = found.weighing.reduce((all, { difference }) => all + difference, 0);
      expect(sum).toBeCloseTo(Math.log(first.probability / second.probability), 7);
      expect(found.weighing.at(-1)?.sum).toBeCloseTo(sum, 9);
    }),
    { numRuns: 40, seed: 6 },
  );
});

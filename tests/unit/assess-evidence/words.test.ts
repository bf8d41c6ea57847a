import { describe, expect, it } from 'vitest';
import {
  datumWords,
  hypothesisWords,
  leftOverWords,
  times,
  weighingWords,
} from '@/app/jobs/[job]/evidence/_words';
import { centerlineEvidenceOf, evidenceOf, type RoundEvidence } from '@/lib/assess/evidence';
import type { Round } from '@/lib/measure/types';
import { knownShop } from '@/tests/simulation/known';
import { type Hung, roundOf } from '@/tests/simulation/round';

const ZEROS: Hung[] = [
  { at: 1100, zero: true, left: 0.1, right: 0.2 },
  { at: 2600, zero: true, left: -0.1, right: 0 },
];
const QUIET: Hung = { at: 3200, left: 0.2, right: -0.3, section: 'rear' };

function evidence(round: Round): RoundEvidence {
  const found = evidenceOf(round, knownShop());
  if ('why' in found) throw new Error(found.why);
  return found;
}

const leading = (round: Round): string => {
  const [first] = evidence(round).hypotheses;
  return first === undefined ? '' : hypothesisWords(first);
};

describe('the leading hypothesis', () => {
  it('names the body of the station that is out, on the side that is out', () => {
    const front: Hung = { at: 0, left: 0.1, right: 8.4, section: 'front' };
    const round = roundOf({
      hung: [...ZEROS, front, QUIET, { ...front, right: 8.7 }],
      lengths: [{ point: 'B-D', deviation: 6 }],
    });
    expect(leading(round)).toMatch(/^Body at B 8\.\d\smm high on the right$/);
  });

  it('names the gauge whose setting a second hanging does not bear out', () => {
    const round = roundOf({
      hung: [
        ...ZEROS,
        { at: 0, left: -9.8, right: 0.2, section: 'front', gauge: 'G7', label: 'b1-03' },
        QUIET,
        { at: 0, left: 0.1, right: 0.3, section: 'front', gauge: 'G7', label: 'b1-05' },
      ],
    });
    expect(leading(round)).toMatch(/^Gauge G7 at A \(setup b1-03\) set (9|10)\.\d\smm low on the left/);
    expect(evidence(round).hypotheses[0]?.faults[0]?.setup).toBe('b1-03');
  });

  it('names the slip whose size fits', () => {
    const round = roundOf({
      clearance: 120,
      hung: [
        ...ZEROS,
        { at: 0, left: -120.2, right: -119.9, section: 'front' },
        QUIET,
        { at: 0, left: 0.2, right: 0.1, section: 'front' },
      ],
    });
    expect(leading(round)).toMatch(
      /^Gauge G3 at A and B \(setup b1-03\) set 1(19|20)\.\d\smm .*low.* \(fits: clearance left out\)$/,
    );
  });

  it('names the zero gauge when all other stations are off along one line, and draws the datum through it', () => {
    // The zero gauge at 1100 is 6 mm high on both sides: 10.4 mm low at 0, 2.4 mm high at 3200.
    const round = roundOf({
      hung: [
        ...ZEROS,
        { at: 0, left: -10.5, right: -10.3, section: 'front' },
        { at: 400, left: -8.7, right: -8.9, section: 'front' },
        { at: 3200, left: 2.3, right: 2.6, section: 'rear' },
        { at: 3700, left: 4.5, right: 4.2, section: 'rear' },
      ],
    });
    const [first] = evidence(round).hypotheses;
    expect(first && hypothesisWords(first)).toMatch(/at E and F .* high.*, so the datum is tilted$/);
    expect(first && datumWords(first.datum)).toMatch(
      /^The datum is off by \+[56]\.\d\smm left, \+[56]\.\d\smm right at the front zero station\./,
    );
  });

  it('is ordinary scatter where no height is out of the ordinary', () => {
    const round = roundOf({ hung: [...ZEROS, { at: 0, left: 0.4, right: -0.5, section: 'front' }, QUIET] });
    expect(leading(round)).toBe('Ordinary scatter of setting and reading, and nothing else');
    expect(datumWords(evidence(round).hypotheses[0]?.datum ?? [])).toMatch(/stays where it is/);
  });
});

describe('the bars of a hypothesis', () => {
  const round = roundOf({ hung: [...ZEROS, { at: 0, left: -10, right: 0.2, section: 'front' }, QUIET] });

  it('stand at every height, the zero stations at nothing, and near the reading where the fault is', () => {
    const { hypotheses } = evidence(round);
    for (const { bars } of hypotheses) {
      expect(bars).toHaveLength(8);
      expect(bars.filter(({ zero }) => zero).map(({ expected }) => expected)).toEqual([0, 0, 0, 0]);
    }
    const out = hypotheses[0]?.bars.find(({ point }) => point === 'A');
    expect(out?.measured).toBe(-10);
    expect(Math.abs((out?.expected ?? 0) + 10)).toBeLessThan(1);
  });

  it('leave to chance what a hypothesis does not explain, and say where', () => {
    const plain = evidence(round).hypotheses.at(-1);
    expect(plain && leftOverWords(plain.bars)).toMatch(
      /^It fits worst at [A-H] (left|right): .* read, .* expected/,
    );
  });
});

describe('the weighing in words', () => {
  const withLength = (deviation: number): RoundEvidence =>
    evidence(
      roundOf({
        hung: [...ZEROS, { at: 0, left: -10.2, right: 0.3, section: 'front' }, QUIET],
        lengths: [{ point: 'A-C', deviation }],
      }),
    );

  it('says how the two stand, and that a length within its tolerance speaks for the gauge', () => {
    const { hypotheses, weighing } = withLength(0.2);
    expect(hypotheses.slice(0, 2).map(({ faults }) => faults[0]?.what)).toEqual(['body', 'gauge']);
    const words = weighingWords(weighing, ['A', 'B']);
    expect(words[0]).toMatch(/^All together A is [\d.]+ times likelier than B\.$/);
    expect(words.at(-1)).toMatch(
      /^What speaks most for B is length A–C \(\+0\.2\smm\): [\d.]+ times likelier if B holds\.$/,
    );
  });

  it('gives more to the body the more the length is out', () => {
    const body = (deviation: number) =>
      withLength(deviation)
        .hypotheses.filter(({ faults }) => faults[0]?.what === 'body')
        .reduce((sum, { probability }) => sum + probability, 0);
    expect(body(7)).toBeGreaterThan(body(0.2) + 0.05);
  });

  it('claims no more than two figures', () => {
    expect(times(Math.log(17.26))).toBe('17 times likelier');
    expect(times(-Math.log(3.44))).toBe('3.4 times likelier');
    expect(times(Math.log(4321))).toBe('4,300 times likelier');
    expect(times(0.05)).toBe('about equally likely');
    expect(times(40)).toBe('more than a million times likelier');
  });
});

it('a round without two zero stations has no evidence, and says why', () => {
  const found = evidenceOf(roundOf({ hung: [QUIET] }), knownShop());
  expect(found).toHaveProperty('why', expect.stringMatching(/needs exactly two/));
});

describe('centre pins', () => {
  const pin = (at: number, left: number, zero = false): Hung => ({ at, left, zero, quantity: 'centerline' });

  it('have the same question, in words without sides and heights', () => {
    const round = roundOf({
      hung: [pin(1100, 0.1, true), pin(2600, 0, true), pin(0, 9.5), pin(3200, 0.2), pin(0, 9.2)],
    });
    const first = centerlineEvidenceOf(round, knownShop())?.hypotheses[0];
    expect(first && hypothesisWords(first, 'centerline')).toMatch(
      /^Body at A 9\.\d\smm in the plus direction$/,
    );
    expect(evidenceOf(round, knownShop())).toHaveProperty('why');
  });

  it('are silent where none was read', () => {
    expect(centerlineEvidenceOf(roundOf({ hung: [...ZEROS, QUIET] }), knownShop())).toBeNull();
  });
});

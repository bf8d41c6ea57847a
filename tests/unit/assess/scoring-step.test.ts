import { describe, expect, it } from 'vitest';
import { scores, type Scores } from '@/lib/assess/learn/scores';
import { scoringStep } from '@/lib/assess/learn/scoring-step';

function found(score: number[], expected: number[], missing: number[], information: number[]): Scores {
  const all = scores(score.map((_, i) => `${i}`));
  all.score.set(score);
  all.expected.set(expected);
  all.missing.set(missing);
  all.information.set(information);
  return all;
}

const flat = [
  { precision: 0, from: 0 },
  { precision: 0, from: 0 },
];

describe('a scoring step', () => {
  it('goes by what is expected less what is missing, and draws towards the prior', () => {
    const all = found([3, 1], [4, 1, 1, 5], [1, 0, 0, 1], [2, 0, 0, 8]);
    const { step, covariance } = scoringStep(all, [
      { precision: 1, from: 2 },
      { precision: 2, from: -1 },
    ]);
    // (4 − 1 + 1, 1; 1, 5 − 1 + 2) x = (3 − 2, 1 + 2) has the solution (3, 11) / 23.
    expect(step[0]).toBeCloseTo(3 / 23, 12);
    expect(step[1]).toBeCloseTo(11 / 23, 12);
    // The covariance is that of the squares of the scores: 1 / (2 + 1) and 1 / (8 + 2).
    expect([...covariance].map((value) => value.toFixed(12))).toEqual(
      [1 / 3, 0, 0, 0.1].map((value) => value.toFixed(12)),
    );
  });

  it('takes no more than half of what is expected of one parameter to be missing', () => {
    const { step } = scoringStep(found([1, 1], [4, 0, 0, 4], [3.9, 0, 0, 1], [1, 0, 0, 1]), flat);
    expect(step[0]).toBeCloseTo(1 / (4 - 2), 12);
    expect(step[1]).toBeCloseTo(1 / (4 - 1), 12);
  });

  it('takes half as much to be missing where else nothing would be known of a sum', () => {
    const { step } = scoringStep(found([1, 1], [1, 0, 0, 1], [0.5, 0.5, 0.5, 0.5], [1, 0, 0, 1]), flat);
    expect(step[0]).toBeCloseTo(2, 12);
    expect(step[1]).toBeCloseTo(2, 12);
  });

  it('refuses parameters of which nothing is known', () => {
    expect(() => scoringStep(found([0, 0], [0, 0, 0, 0], [0, 0, 0, 0], [0, 0, 0, 0]), flat)).toThrow(
      /not positive definite/,
    );
  });
});

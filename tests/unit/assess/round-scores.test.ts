import { describe, expect, it } from 'vitest';
import { RoundScores } from '@/lib/assess/learn/round-scores';
import { addScores, scores } from '@/lib/assess/learn/scores';

/** A round that tells of the second and the fourth of four parameters, with the information 4 and 9 expected of them. */
function round(): RoundScores {
  const own = new RoundScores([1, 3]);
  own.expect(0, 0, 4);
  own.expect(1, 1, 9);
  return own;
}

describe('the scores of a round', () => {
  it('are those of its explanations by their weights, and what differs between these is missing', () => {
    const into = scores(['a', 'b', 'c', 'd']);
    const own = round();
    own.add(0, 1);
    own.add(0, 1);
    own.add(1, -1);
    own.weigh(0.75);
    own.add(0, -2);
    own.weigh(0.25);
    addScores(into, own);
    // Of b: 0.75 · 2 + 0.25 · −2 = 1, of d −0.75; squares 0.75 · 4 + 0.25 · 4 = 4 and 0.75; their product −1.5.
    expect([...into.score]).toEqual([0, 1, 0, -0.75]);
    const at = (matrix: Float64Array, i: number, j: number) => matrix[i * 4 + j];
    expect(at(into.information, 1, 3)).toBe(-0.75);
    expect(at(into.expected, 3, 3)).toBe(9);
    expect(at(into.missing, 1, 1)).toBe(3);
    expect(at(into.missing, 3, 3)).toBe(0.75 - 0.75 ** 2);
    expect(at(into.missing, 1, 3)).toBe(-1.5 + 0.75);
    expect(at(into.missing, 0, 0)).toBe(0);
  });

  it('count for at most five standard deviations of what is expected of them', () => {
    const into = scores(['a', 'b', 'c', 'd']);
    const own = round();
    own.add(0, 350);
    own.add(1, -14);
    own.weigh(1);
    addScores(into, own);
    expect([...into.score]).toEqual([0, 5 * 2, 0, -14]);
    expect(into.information[1 * 4 + 1]).toBe(100);
  });

  it('miss no more of the information on a parameter than is expected', () => {
    const into = scores(['a', 'b', 'c', 'd']);
    const own = round();
    for (const value of [30, -30]) {
      own.add(0, value);
      own.weigh(0.5);
    }
    addScores(into, own);
    expect(into.missing[1 * 4 + 1]).toBeCloseTo(4, 12);
  });
});

import { describe, expect, it } from 'vitest';
import { crossedTrial } from '@/lib/stats/crossed-trial';

/** Three parts, two operators, `repeats` readings each; part 10 apart, operator 1 apart, repeats ± 0.5. */
function trial(repeats: number) {
  const part: string[] = [];
  const operator: string[] = [];
  const value: number[] = [];
  for (const [p, name] of ['a', 'b', 'c'].entries()) {
    for (const [o, who] of ['x', 'y'].entries()) {
      for (let k = 0; k < repeats; k++) {
        part.push(name);
        operator.push(who);
        value.push(10 * p + o + (k % 2 === 0 ? 0.5 : -0.5) + (p === 1 && o === 1 ? 0.25 : 0));
      }
    }
  }
  return { part, operator, value };
}

describe('crossedTrial', () => {
  it('does not see the order of the readings or a constant', () => {
    const plain = trial(2);
    const back = crossedTrial({
      part: [...plain.part].reverse(),
      operator: [...plain.operator].reverse(),
      value: [...plain.value].reverse().map((value) => value + 4096),
    });
    const found = crossedTrial(plain);
    expect(back.components.anova?.part).toBeCloseTo(found.components.anova?.part ?? NaN, 9);
    expect(back.table?.['part:operator'].f).toBeCloseTo(found.table?.['part:operator'].f ?? NaN, 9);
  });

  it('takes the tolerance as its half width: share = 6 gauge sd / (2 × half width)', () => {
    const found = crossedTrial({ ...trial(2), tolerance: 3 });
    const gauge = Math.sqrt(found.components.truncated?.gauge ?? NaN);
    expect(found.shareOfTolerance.anova).toBeCloseTo(gauge, 12);
    expect(crossedTrial(trial(2)).shareOfTolerance).toEqual({ anova: null, reml: null });
  });

  it('of single readings gives interaction and repeats together, and says so', () => {
    const found = crossedTrial(trial(1));
    expect(found.table?.repeat).toMatchObject({ df: 0, ms: null });
    expect(found.components.anova?.['part:operator']).toBeNull();
    expect(found.components.anova?.repeat).toBe(found.table?.['part:operator'].ms);
    expect(found.components.reml?.repeat).toBeCloseTo(found.components.anova?.repeat ?? NaN, 6);
    expect(found.notes.join(' ')).toContain('cannot be told apart');
  });

  it('that is not balanced has REML alone, and says so', () => {
    const { part, operator, value } = trial(2);
    const found = crossedTrial({ part: part.slice(1), operator: operator.slice(1), value: value.slice(1) });
    expect(found.table).toBeNull();
    expect(found.components.anova).toBeNull();
    expect(found.components.reml?.part).toBeGreaterThan(0);
    expect(found.why).toContain('not balanced');
  });

  it('with one operator is no crossed trial', () => {
    const found = crossedTrial({ part: [1, 1, 2, 2], operator: ['x', 'x', 'x', 'x'], value: [1, 2, 3, 4] });
    expect(found.components).toEqual({ anova: null, truncated: null, reml: null });
    expect(found.why).toContain('two operators');
  });

  it('of equal readings has no ratio and no categories', () => {
    const { part, operator, value } = trial(2);
    const found = crossedTrial({ part, operator, value: value.map(() => 7) });
    expect(found.table?.part).toMatchObject({ ss: 0, f: null, p: null });
    expect(found.distinctCategories.anova).toEqual({ raw: null, count: null });
  });

  it('refuses readings that are not finite, unequal lengths, and a tolerance of nothing', () => {
    const { part, operator, value } = trial(2);
    expect(() => crossedTrial({ part, operator, value: [...value.slice(1), NaN] })).toThrow(RangeError);
    expect(() => crossedTrial({ part: part.slice(1), operator, value })).toThrow(/same length/);
    expect(() => crossedTrial({ part, operator, value, tolerance: 0 })).toThrow(/tolerance/);
  });
});

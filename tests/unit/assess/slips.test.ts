import { describe, expect, it } from 'vitest';
import { assessRound } from '@/lib/assess/round';
import type { HeightVerdict } from '@/lib/assess/types';
import { knownShop } from '@/tests/simulation/known';
import { type Hung, roundOf } from '@/tests/simulation/round';

const CLEARANCE = 50;
const shop = knownShop({ gauges: { G3: { mark: 24, markSd: 0.5 } } });
// Ten millimetres on one side are also a common size of a mis-set and of damage: a slip of the tape is likelier
// than these only in a shop where it happens.
shop.missets['tape-10'] = 0.2;

/** A clean round after the repair but for the front gauge: sheet values 166 left and 172 right at the front. */
const hung = (left: number, right: number, front: Partial<Hung> = {}): Hung[] => [
  { at: 1100, zero: true, left: 0.1, right: 0, nominal: [212, 212] },
  { at: 2600, zero: true, left: 0, right: -0.2, nominal: [238, 238] },
  { at: 0, left, right, nominal: [166, 172], gauge: 'G3', section: 'front', n: [2, 2], ...front },
  { at: 3100, left: 0.3, right: -0.4, nominal: [301, 301], section: 'rear' },
];

function front(left: number, right: number, more: Partial<Hung> = {}): HeightVerdict[] {
  const verdict = assessRound(
    roundOf({ hung: hung(left, right, more), clearance: CLEARANCE, stage: 'after' }),
    shop,
  );
  return verdict.heights.filter((height) => height.station === 0);
}

describe('a recognisable slip is named', () => {
  it.each([
    { slip: 'clearance left out', left: -50.3, right: -49.6 },
    { slip: 'clearance added twice', left: 50.4, right: 49.8 },
    // The row of station 3100: 301 − 166 and 301 − 172.
    { slip: 'another row of the sheet', left: 135.3, right: 128.8 },
    { slip: 'another fixed mark', left: 24.2, right: 23.7 },
    { slip: 'another fixed mark', left: -23.8, right: -24.3 },
  ])('on both sides: $slip, $left and $right mm', ({ slip, left, right }) => {
    const [l, r] = front(left, right);
    expect(l?.signature).toBe(slip);
    expect(r?.signature).toBe(slip);
    for (const height of [l, r]) {
      expect(height?.p.gauge).toBeGreaterThan(0.9);
      expect(Math.abs((height?.misset ?? NaN) - (height?.deviation ?? NaN))).toBeLessThan(
        1 + 0.05 * Math.abs(left),
      );
    }
  });

  it.each([
    { slip: 'tape read 10 mm off', left: 10.1, right: 0.2, sheet: [166, 166] },
    { slip: 'tape read 10 mm off', left: 0.1, right: -9.8, sheet: [166, 166] },
    { slip: 'tape read 100 mm off', left: -99.8, right: 0.3, sheet: [166, 166] },
    // 166 with 50 mm clearance is set at 216; read 261, that is 45 mm off.
    { slip: 'two digits exchanged', left: 45.2, right: 0.1, sheet: [166, 166] },
  ])('on one side, and not on the other: $slip, $left and $right mm', ({ slip, left, right, sheet }) => {
    const [l, r] = front(left, right, { nominal: [sheet[0] ?? 0, sheet[1] ?? 0] });
    const [wrong, sound] = Math.abs(left) > Math.abs(right) ? [l, r] : [r, l];
    expect(wrong?.signature).toBe(slip);
    expect(sound?.signature).toBeNull();
    expect(wrong?.p.gauge).toBeGreaterThan(0.5);
    expect(sound?.p.neither).toBeGreaterThan(0.9);
  });

  it('where the sheet of both sides was misread: 172 as 127', () => {
    const [l, r] = front(-45.1, -44.8, { nominal: [172, 172] });
    expect(l?.signature).toBe('two digits exchanged');
    expect(r?.signature).toBe('two digits exchanged');
  });

  it('where left and right were exchanged and the sheet tells them apart', () => {
    const [l, r] = front(36.2, -35.9, { nominal: [166, 202] });
    expect(l?.signature).toBe('left and right exchanged');
    expect(r?.signature).toBe('left and right exchanged');
  });
});

describe('nothing is named', () => {
  it.each([
    { what: 'an ordinary round', left: 0.4, right: -0.6 },
    { what: 'a height at the tolerance', left: 3.1, right: 2.9 },
    { what: 'a mis-set of no known size', left: 6.8, right: 7.1 },
    { what: 'a size near no slip', left: 17.2, right: 16.7 },
  ])('in $what', ({ left, right }) => {
    for (const height of front(left, right)) expect(height.signature).toBeNull();
  });

  it('at the other stations of a round with a slip', () => {
    const verdict = assessRound(
      roundOf({ hung: hung(-50.3, -49.6), clearance: CLEARANCE, stage: 'after' }),
      shop,
    );
    for (const height of verdict.heights)
      if (height.station !== 0) expect(height.signature, `${height.setup} ${height.side}`).toBeNull();
  });

  it('where there is no clearance to leave out', () => {
    const verdict = assessRound(roundOf({ hung: hung(-50.3, -49.6), clearance: 0, stage: 'after' }), shop);
    for (const height of verdict.heights) expect(height.signature ?? '').not.toContain('clearance');
  });
});

describe('a slip of a zero gauge', () => {
  it('is named at the zero gauge, whose own reading cannot show it', () => {
    // The zero gauge at 2600 was set without the clearance on both sides: the datum tilts by 50 mm there.
    const lever = (x: number): number => (-(x - 1100) / 1500) * -CLEARANCE;
    const tilted: Hung[] = [
      { at: 1100, zero: true, left: 0.1, right: 0, nominal: [212, 212] },
      { at: 2600, zero: true, left: 0, right: -0.2, nominal: [238, 238] },
      ...[0, 500, 3100, 3900].map((at): Hung => ({
        at,
        left: lever(at) + 0.3,
        right: lever(at) - 0.2,
        nominal: [166, 166],
        n: [2, 2],
      })),
    ];
    const verdict = assessRound(roundOf({ hung: tilted, clearance: CLEARANCE, stage: 'after' }), shop);
    const zero = verdict.heights.filter((height) => height.setup === 'b1-02');
    expect(zero.map((height) => height.signature)).toEqual(['clearance left out', 'clearance left out']);
    for (const height of zero) expect(height.p.gauge).toBeGreaterThan(0.95);
    expect(verdict.pZeroMisset).toBeGreaterThan(0.95);
  });
});

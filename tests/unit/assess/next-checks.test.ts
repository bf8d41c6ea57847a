import { describe, expect, it } from 'vitest';
import { assessRound } from '@/lib/assess/round';
import { knownShop } from '@/tests/simulation/known';
import { type Hung, roundOf } from '@/tests/simulation/round';

const zeros: Hung[] = [
  { at: 1100, zero: true, left: 0.1, right: 0 },
  { at: 2600, zero: true, left: 0, right: -0.1 },
];
const shop = knownShop({ technicians: { T1: {}, T2: { setting: 0.5 } } });

/** Both sides of the rear read 6 mm low: the gauge, or a rear impact. */
const ambiguous = roundOf({
  hung: [
    ...zeros,
    { at: 0, left: 0.2, right: 0.3, section: 'front', n: [2, 2] },
    { at: 3100, left: -6.1, right: -5.8, section: 'rear', n: [2, 2] },
    { at: 3800, left: 0.4, right: -0.3, section: 'rear', n: [2, 2] },
  ],
});

describe('the next checks of a doubtful round', () => {
  const verdict = assessRound(ambiguous, shop);
  const [best] = verdict.nextChecks;

  it('begin with hanging the doubtful gauge again', () => {
    expect(best?.action).toBe('rehang');
    expect(best?.setup).toBe('b1-04');
  });

  it('say which points to read, what they read now and what it would mean', () => {
    expect(best?.words).toContain('the gauge at G and H');
    expect(best?.words).toMatch(/still reads 6\.1 mm low, it is the body/);
    expect(best?.words).toContain('left');
  });

  it('stand in the order of bits a minute, none telling less than nothing', () => {
    const value = verdict.nextChecks.map(({ gainBits, minutes }) => gainBits / minutes);
    expect(value.length).toBeGreaterThan(3);
    value.slice(1).forEach((v, i) => expect(v).toBeLessThanOrEqual(value[i] ?? NaN));
    for (const check of verdict.nextChecks) {
      expect(check.gainBits).toBeGreaterThan(0);
      expect(check.minutes).toBeGreaterThan(0);
    }
  });

  it('give more bits with a steadier hand and a new pair of eyes, at more minutes', () => {
    const again = verdict.nextChecks.find((c) => c.action === 'rehang' && c.setup === 'b1-04');
    const other = verdict.nextChecks.find((c) => c.action === 'other-technician' && c.setup === 'b1-04');
    expect(other?.words).toContain('Let T2');
    expect(other?.gainBits).toBeGreaterThan(again?.gainBits ?? NaN);
    expect(other?.minutes).toBeGreaterThan(again?.minutes ?? NaN);
  });

  it('expect less of hanging a gauge again that nobody doubts', () => {
    const doubted = verdict.nextChecks.find((c) => c.action === 'rehang' && c.setup === 'b1-04');
    for (const setup of ['b1-03', 'b1-05']) {
      const bits = verdict.nextChecks.find((c) => c.action === 'rehang' && c.setup === setup)?.gainBits ?? 0;
      expect(bits).toBeLessThan(0.5 * (doubted?.gainBits ?? NaN));
    }
  });

  it('offer a length that was not read where it bears on a doubtful point, and no other', () => {
    const { nextChecks } = assessRound(ambiguous, shop, {
      unread: [{ point: 'E-G' }, { point: 'X-Y' }],
    });
    const lengths = nextChecks.filter((c) => c.action === 'read-length');
    expect(lengths.map((c) => c.point)).toEqual(['E-G']);
    expect(lengths[0]?.words).toContain('E-G');
    expect(lengths[0]?.gainBits).toBeLessThan(1);
  });
});

describe('the next checks where there is no doubt', () => {
  it('expect little of any check on a clean round', () => {
    const { nextChecks } = assessRound(
      roundOf({
        hung: [...zeros, { at: 0, left: 0.2, right: 0.3 }, { at: 3100, left: -0.4, right: 0.1 }],
        stage: 'after',
      }),
      shop,
    );
    for (const check of nextChecks) expect(check.gainBits).toBeLessThan(0.2);
  });

  it('shrink when the gauge was hung again and repeats its reading', () => {
    const again = roundOf({
      hung: [
        ...zeros,
        { at: 0, left: 0.2, right: 0.3, section: 'front', n: [2, 2] },
        { at: 3100, left: -6.1, right: -5.8, section: 'rear', n: [2, 2] },
        { at: 3800, left: 0.4, right: -0.3, section: 'rear', n: [2, 2] },
        { at: 3100, left: -5.8, right: -6.2, section: 'rear', n: [2, 2] },
      ],
    });
    const gain = (round: typeof again, setup: string): number =>
      assessRound(round, shop).nextChecks.find((c) => c.action === 'rehang' && c.setup === setup)?.gainBits ??
      0;
    expect(gain(again, 'b1-06')).toBeLessThan(0.5 * gain(ambiguous, 'b1-04'));
  });

  it('send to the zero gauge when the other stations lie on a tilted line', () => {
    // Zero gauge at b 5 mm too high on both sides: every other height is off by the lever.
    const lever = (x: number): number => (x - 1100) / 1500;
    const tilted = [0, 500, 3100, 3800].map((at) => ({
      at,
      left: -5 * lever(at),
      right: -5 * lever(at) + 0.2,
      n: [2, 2] as [number, number],
    }));
    const verdict = assessRound(roundOf({ hung: [...zeros, ...tilted] }), shop);
    expect(verdict.pZeroMisset).toBeGreaterThan(0.8);
    const [first] = verdict.nextChecks;
    expect(first?.setup).toBe('b1-02');
    expect(first?.words).toContain('zero gauge at G and H');
  });
});

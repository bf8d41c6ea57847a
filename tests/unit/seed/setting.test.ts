import { describe, expect, it } from 'vitest';
import { sampleCorrelation, sampleStandardDeviation } from 'simple-statistics';
import { ORDINARY_HAND } from '@/seed/hand';
import { randomAt } from '@/seed/random';
import { setGauge } from '@/seed/setting';

const place = { nominal: { L: 253, R: 253 }, clearance: 0, neighbours: [], fixedMark: 21, zero: false };

describe('setGauge', () => {
  it('scatters each hanger by the setting sd, half of the variance common to both', () => {
    const random = randomAt(1);
    const hand = { ...ORDINARY_HAND, setting: 0.8, missetRate: 0 };
    const settings = Array.from({ length: 20_000 }, () => setGauge(hand, place, random));
    const left = settings.map(({ L }) => L.scatter);
    const right = settings.map(({ R }) => R.scatter);
    expect(sampleStandardDeviation(left)).toBeCloseTo(0.8, 1);
    expect(sampleStandardDeviation(right)).toBeCloseTo(0.8, 1);
    expect(Math.abs(sampleCorrelation(left, right) - 0.5)).toBeLessThan(0.03);
    expect(settings.every(({ L, R }) => L.gross === 0 && R.gross === 0 && L.fault === null)).toBe(true);
  });

  it('mis-sets as often as the hand does, by 3.5 mm at least', () => {
    const random = randomAt(2);
    const hand = { ...ORDINARY_HAND, missetRate: 0.1 };
    const settings = Array.from({ length: 20_000 }, () => setGauge(hand, place, random));
    const wrong = settings.filter(({ L, R }) => L.fault !== null || R.fault !== null);
    expect(Math.abs(wrong.length / settings.length - 0.1)).toBeLessThan(0.01);
    for (const { L, R } of wrong) {
      expect(Math.max(Math.abs(L.gross), Math.abs(R.gross))).toBeGreaterThanOrEqual(3.5);
    }
  });

  it('leaves the clearance out as often as the hand forgets it, and never where there is none', () => {
    const hand = { ...ORDINARY_HAND, missetRate: 0, forgetsClearance: 0.2 };
    const forgotten = (clearance: number) => {
      const random = randomAt(3);
      const settings = Array.from({ length: 5_000 }, () => setGauge(hand, { ...place, clearance }, random));
      return (
        settings.filter(({ L }) => L.fault === 'clearance left out' && L.gross === -clearance).length / 5_000
      );
    };
    expect(Math.abs(forgotten(100) - 0.2)).toBeLessThan(0.02);
    expect(forgotten(0)).toBe(0);
  });

  it('never leaves a zero gauge further off than anybody would notice', () => {
    const random = randomAt(4);
    const hand = { ...ORDINARY_HAND, missetRate: 1 };
    const zero = { ...place, zero: true, clearance: 100, neighbours: [{ L: 668, R: 668 }] };
    const sizes = Array.from({ length: 5_000 }, () => Math.abs(setGauge(hand, zero, random).L.gross));
    expect(Math.max(...sizes)).toBeLessThanOrEqual(60);
  });
});

import { describe, expect, it } from 'vitest';
import {
  centresFromInside,
  insideFromOutside,
  outsideFromInside,
  pointersExplaining,
  restOfTracking,
  unequalPointerError,
} from '@/lib/measure/trade';

describe('pointers with a width', () => {
  it('take both widths off an outside reading, and half of each lies beyond the inside', () => {
    expect(insideFromOutside(1012, 6, 6)).toBe(1000);
    expect(outsideFromInside(1000, 6, 6)).toBe(1012);
    expect(centresFromInside(1000, 6, 10)).toBe(1008);
    expect(restOfTracking(1452, 600)).toBe(852);
  });
});

describe('pointers of unequal length', () => {
  it('read the hypotenuse between two points of one height', () => {
    // 3-4-5: pointers that differ by 300 over a length of 400 read 500.
    expect(unequalPointerError(400, 300)).toBe(100);
    expect(unequalPointerError(1000, 40)).toBeCloseTo(0.79968, 5);
    expect(unequalPointerError(1000, 0)).toBe(0);
    // Tiny differences do not drown in rounding: d² / 2L to many digits.
    expect(unequalPointerError(1000, 1e-3)).toBeCloseTo(5e-10, 18);
  });

  it('are found from the lengths that they made too long, within the limits', () => {
    const lengths = [400, 900, 1500].map((nominal) => ({
      nominal,
      deviation: unequalPointerError(nominal, 60),
    }));
    const found = pointersExplaining(lengths, 0.5);
    expect(found?.difference).toBeCloseTo(60, 0);
    expect(found?.low).toBeGreaterThan(0);
    expect(found?.low).toBeLessThan(60);
    expect(found?.high).toBeGreaterThan(60);
    expect(found?.left).toBeLessThan(0.05);
  });

  it('do not explain lengths that are too short, and need one length at least', () => {
    const short = [600, 1200].map((nominal) => ({ nominal, deviation: -2 }));
    expect(pointersExplaining(short, 0.5)).toMatchObject({ difference: 0, low: 0 });
    expect(pointersExplaining([], 0.5)).toBeNull();
    expect(pointersExplaining([{ nominal: 0, deviation: 1 }], 0.5)).toBeNull();
  });
});

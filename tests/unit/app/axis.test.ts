import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { axisBetween, axisOver } from '@/app/_figures/axis';

describe('an axis', () => {
  test('has round ticks that hold every value', () => {
    expect(axisOver([0.31, 1.2], 0, 1).ticks).toEqual([0, 0.5, 1, 1.5]);
    expect(axisOver([-0.8, 0.4], -0.5, 0.5).ticks).toEqual([-1, -0.5, 0, 0.5]);
  });

  test('takes in whatever it is given, and places it between its ends', () => {
    const value = fc.double({ min: -1e5, max: 1e5, noNaN: true });
    fc.assert(
      fc.property(
        fc.array(value, { maxLength: 20 }),
        value,
        fc.double({ min: 0.01, max: 1e5, noNaN: true }),
        (values, low, span) => {
          const axis = axisOver(values, low, low + span);
          const slack = (axis.high - axis.low) * 1e-6;
          for (const one of [...values, low, low + span]) {
            expect(one).toBeGreaterThanOrEqual(axis.low - slack);
            expect(one).toBeLessThanOrEqual(axis.high + slack);
            expect(axis.place(one)).toBeGreaterThanOrEqual(0);
            expect(axis.place(one)).toBeLessThanOrEqual(1);
          }
          expect(axis.ticks.length).toBeLessThan(12);
        },
      ),
    );
  });

  test('holds values beyond its ends at the end', () => {
    const axis = axisBetween(0, 1, []);
    expect([axis.place(-3), axis.place(0.25), axis.place(9)]).toEqual([0, 0.25, 1]);
  });
});

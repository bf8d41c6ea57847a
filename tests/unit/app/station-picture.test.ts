import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import type { StationMark } from '@/app/_figures/station-picture/marks';
import { FIELD, scaleFor } from '@/app/_figures/station-picture/scale';

const mark = (station: number, deviation: number, tolerance = 3): StationMark => ({
  key: `${station}`,
  point: 'K',
  side: 'L',
  station,
  zero: false,
  deviation,
  tolerance,
  call: 'nothing-found',
  last: true,
  gauge: 'C01',
});

describe('the scale of the picture of the stations', () => {
  test('front stands left of rear, and more than the sheet above the line', () => {
    const scale = scaleFor([mark(0, 6), mark(4000, -6)]);
    expect(scale.x(0)).toBeLessThan(scale.x(4000));
    expect(scale.y(6)).toBeLessThan(0);
    expect(scale.y(-6)).toBe(-scale.y(6));
  });

  test('the stated exaggeration is the drawn one', () => {
    const scale = scaleFor([mark(0, 2), mark(4000, -2)]);
    const along = scale.x(1) - scale.x(0);
    expect(Math.abs(scale.y(1)) / along).toBeCloseTo(scale.exaggeration, 9);
  });

  test('one slip of a hundred millimetres is cut off and does not flatten the others', () => {
    const scale = scaleFor([mark(0, 100), mark(4000, 2)]);
    expect(scale.limit).toBe(12);
    expect(scale.y(100)).toBe(scale.y(12));
    expect(Math.abs(scale.y(3))).toBeGreaterThan(8);
  });

  test('every mark stays within its field', () => {
    const stations = fc.array(
      fc.tuple(fc.integer({ min: -5000, max: 9000 }), fc.double({ min: -300, max: 300, noNaN: true })),
      {
        minLength: 1,
        maxLength: 12,
      },
    );
    fc.assert(
      fc.property(stations, (places) => {
        const marks = places.map(([station, deviation]) => mark(station, deviation));
        const scale = scaleFor(marks);
        for (const { station, deviation } of marks) {
          expect(scale.x(station)).toBeGreaterThanOrEqual(FIELD.left);
          expect(scale.x(station)).toBeLessThanOrEqual(FIELD.width - FIELD.right);
          expect(Math.abs(scale.y(deviation))).toBeLessThanOrEqual(FIELD.band / 2);
        }
      }),
    );
  });
});

import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import type { StationMark } from '@/app/_figures/station-picture/marks';
import { FIELD, scaleFor } from '@/app/_figures/station-picture/scale';
import { shiftLine } from '@/app/_figures/station-picture/shift-line';

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

describe('the shift of the datum', () => {
  const marks = [mark(0, -8), mark(1000, 0), mark(2000, 0), mark(4000, 11)];
  const scale = scaleFor(marks);
  const ends = (path: string) =>
    [...path.matchAll(/[\d.]+ [\d.]+/g)].map(([pair]) => pair.split(' ').map(Number));
  const field = { from: 50, to: 780 };

  test('passes through minus the error of each zero gauge', () => {
    const line = {
      side: 'L',
      front: { station: 1000, error: 2 },
      rear: { station: 2000, error: 0 },
    } as const;
    const [[x1 = 0, y1 = 0] = [], [x2 = 0, y2 = 0] = []] = ends(shiftLine(line, scale, 100, field));
    const at = (x: number) => y1 + ((y2 - y1) * (x - x1)) / (x2 - x1);
    expect(at(scale.x(1000))).toBeCloseTo(100 + scale.y(-2), 0);
    expect(at(scale.x(2000))).toBeCloseTo(100, 0);
  });

  test('ends where bars are cut off', () => {
    const line = {
      side: 'L',
      front: { station: 1000, error: 13 },
      rear: { station: 2000, error: 0 },
    } as const;
    for (const [, y = 0] of ends(shiftLine(line, scale, 100, field))) {
      expect(Math.abs(y - 100)).toBeLessThanOrEqual(Math.abs(scale.y(scale.limit)) + 0.1);
    }
  });

  test('is a level line where both zero gauges are off alike', () => {
    const line = {
      side: 'R',
      front: { station: 1000, error: 1 },
      rear: { station: 2000, error: 1 },
    } as const;
    const [[x1, y1] = [], [x2, y2] = []] = ends(shiftLine(line, scale, 100, field));
    expect([x1, x2]).toEqual([50, 780]);
    expect(y1).toBe(y2);
  });
});

import { describe, expect, it } from 'vitest';
import {
  DEFAULT_TOLERANCE,
  deviationOf,
  halfWidth,
  inchesToMillimetres,
  isWithin,
  millimetresToInches,
  readMeasurementFile,
  setHeight,
} from '@/lib/measure';
import { after, height, length, ROUND } from './lines';

describe('facts of the trade (common practice)', () => {
  it('the tolerance is ±3 mm where the sheet states none', async () => {
    expect(DEFAULT_TOLERANCE).toBe(3);
    const { readings } = await readMeasurementFile(after(length({ tolerance_mm: '' })));
    expect(readings.at(-1)?.tolerance).toBe(3);
  });

  it('a height of 166 mm with 100 mm clearance is set at 266 mm', () => {
    expect(setHeight(166, 100)).toBe(266);
    expect(deviationOf({ quantity: 'height', nominal: 166, clearance: 100, value: 266 })).toBe(0);
  });

  it('a length read 1310 against 1308 is within', () => {
    const deviation = deviationOf({ quantity: 'length', nominal: 1308, clearance: 0, value: 1310 });
    expect(deviation).toBe(2);
    expect(isWithin(deviation, DEFAULT_TOLERANCE)).toBe(true);
  });

  it('the half width is from the centerline to one side', () => {
    expect(halfWidth(1043)).toBe(521.5);
  });
});

describe('deviation', () => {
  it('clearance counts for heights only', () => {
    expect(deviationOf({ quantity: 'height', nominal: 200, clearance: 100, value: 302 })).toBe(2);
    expect(deviationOf({ quantity: 'length', nominal: 200, clearance: 100, value: 202 })).toBe(2);
    expect(deviationOf({ quantity: 'centerline', nominal: 0, clearance: 100, value: -2 })).toBe(-2);
  });

  it('the edge of the tolerance is within, in spite of binary rounding', () => {
    expect(256.1 - (103.1 + 150)).toBeGreaterThan(3);
    expect(deviationOf({ quantity: 'height', nominal: 103.1, clearance: 150, value: 256.1 })).toBe(3);
    expect(isWithin(3.0000000000000004, 3)).toBe(true);
    expect(isWithin(-3, 3)).toBe(true);
    expect(isWithin(3.001, 3)).toBe(false);
  });

  it('adding a clearance changes no digit', () => {
    const bare = deviationOf({ quantity: 'height', nominal: 243, clearance: 0, value: 242.8 });
    const raised = deviationOf({ quantity: 'height', nominal: 243, clearance: 100, value: 342.8 });
    expect(raised).toBe(bare);
  });
});

describe('units', () => {
  it('an inch is 25.4 mm (international yard and pound agreement, 1959)', () => {
    expect(inchesToMillimetres(1)).toBe(25.4);
    expect(millimetresToInches(25.4)).toBe(1);
  });
});

it('the lines of these tests are sound by themselves', async () => {
  expect(ROUND).toHaveLength(3);
  const { faults } = await readMeasurementFile(after(height({ repeat: '2' }), length()));
  expect(faults).toEqual([]);
});

import { describe, expect, test } from 'vitest';
import { monthPoints } from '@/app/_figures/rates-over-time/months';
import { pointsAsText, pointsFromText } from '@/app/_figures/rates-over-time/point';

describe('the months of a figure', () => {
  test('a month without a job stands between its neighbours, over the turn of the year', () => {
    const points = monthPoints([
      { month: '2026-01', of: 4, hits: 3 },
      { month: '2025-11', of: 10, hits: 9 },
    ]);
    expect(points.map(({ month, rate }) => [month, rate])).toEqual([
      ['2025-11', 0.9],
      ['2025-12', null],
      ['2026-01', 0.75],
    ]);
  });

  test('the interval of 9 right of 10 is that of Wilson', () => {
    // By the formula of Wilson (1927), Journal of the American Statistical Association 22, 209–212, worked by hand.
    const [point] = monthPoints([{ month: '2025-11', of: 10, hits: 9 }]);
    expect(point?.low).toBeCloseTo(0.5958, 4);
    expect(point?.high).toBeCloseTo(0.9821, 4);
  });

  test('are the same to the last digit once they came to the device as text', () => {
    const points = monthPoints([
      { month: '2025-11', of: 7, hits: 3 },
      { month: '2026-01', of: 3, hits: 0 },
    ]);
    expect(pointsFromText(pointsAsText(points))).toEqual(points);
  });

  test('no count gives no point', () => {
    expect(monthPoints([])).toEqual([]);
  });
});

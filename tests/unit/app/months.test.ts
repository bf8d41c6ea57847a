import { describe, expect, test } from 'vitest';
import { monthPoints } from '@/app/_overview/months';

describe('the months of the overview', () => {
  test('a month without a job stands between its neighbours, over the turn of the year', () => {
    const points = monthPoints([
      { key: '2026-01', jobs: 4, right: 3 },
      { key: '2025-11', jobs: 10, right: 9 },
    ]);
    expect(points.map(({ month, rate }) => [month, rate])).toEqual([
      ['2025-11', 0.9],
      ['2025-12', null],
      ['2026-01', 0.75],
    ]);
  });

  test('the interval of 9 right of 10 is that of Wilson', () => {
    // By the formula of Wilson (1927), Journal of the American Statistical Association 22, 209–212, worked by hand.
    const [point] = monthPoints([{ key: '2025-11', jobs: 10, right: 9 }]);
    expect(point?.low).toBeCloseTo(0.5958, 4);
    expect(point?.high).toBeCloseTo(0.9821, 4);
  });

  test('no count gives no point', () => {
    expect(monthPoints([])).toEqual([]);
  });
});

import { describe, expect, test } from 'vitest';
import { yearsBelow } from '@/app/_figures/years-below';

const months = (first: number, count: number): string[] =>
  Array.from({ length: count }, (_, i) => {
    const month = first + i;
    return `${2016 + Math.floor(month / 12)}-${String((month % 12) + 1).padStart(2, '0')}`;
  });

const written = (periods: string[], step: number) =>
  yearsBelow(periods, step).flatMap((year, at) => (year === null ? [] : [`${periods[at]} ${year}`]));

describe('years below an axis', () => {
  test('stand where one begins, and below the first of all', () => {
    expect(written(months(5, 14), 50)).toEqual(['2016-06 2016', '2017-01 2017']);
    expect(written(['2025-Q3', '2025-Q4', '2026-Q1', '2026-Q2'], 80)).toEqual([
      '2025-Q3 2025',
      '2026-Q1 2026',
    ]);
  });

  test('the one under way at the left end gives way to the next where both would lie over each other', () => {
    expect(written(months(10, 120), 5.8).slice(0, 2)).toEqual(['2017-01 2017', '2018-01 2018']);
    expect(written(months(0, 120), 5.8).slice(0, 2)).toEqual(['2016-01 2016', '2017-01 2017']);
  });

  test('of more years than there is room for, every second or third stands', () => {
    expect(written(months(0, 240), 2.9).map((one) => one.slice(8))).toEqual(
      Array.from({ length: 10 }, (_, i) => String(2016 + 2 * i)),
    );
  });

  test('no two of them lie over each other, whatever the months and their distance', () => {
    for (let first = 0; first < 12; first++)
      for (const step of [1.5, 3, 5.8, 11, 60]) {
        const at = yearsBelow(months(first, 150), step).flatMap((year, i) => (year === null ? [] : [i]));
        expect(at.length).toBeGreaterThan(0);
        at.forEach((place, i) => expect(i === 0 || (place - (at[i - 1] ?? 0)) * step >= 64).toBe(true));
      }
  });
});

import { describe, expect, test } from 'vitest';
import { namedBelow } from '@/app/_figures/named-below';

const months = (first: number, count: number): string[] =>
  Array.from({ length: count }, (_, i) => {
    const month = first + i;
    return `${2016 + Math.floor(month / 12)}-${String((month % 12) + 1).padStart(2, '0')}`;
  });

const written = (periods: string[], step: number) =>
  namedBelow(periods, step).map(({ at, year }) => [periods[at]?.slice(5), year ?? ''].join(' ').trim());

describe('what is named below an axis of months or quarters', () => {
  test('is each one where there is room, with a year below its first', () => {
    expect(written(months(10, 4), 180)).toEqual(['11 2016', '12', '01 2017', '02']);
    expect(written(['2025-Q3', '2025-Q4', '2026-Q1', '2026-Q2'], 80)).toEqual([
      ...['Q3 2025', 'Q4', 'Q1 2026', 'Q2'],
    ]);
  });

  test('is otherwise the same few of each year, a January among them, so that no year stands below another’s month', () => {
    expect(written(months(5, 30), 24)).toEqual([
      ...['07 2016', '10', '01 2017', '04', '07', '10', '01 2018', '04', '07', '10'],
    ]);
    expect(written(months(10, 121), 5.8).slice(0, 3)).toEqual(['01 2017', '01 2018', '01 2019']);
    expect(written(['2025-Q2', '2025-Q3', '2025-Q4', '2026-Q1', '2026-Q2', '2026-Q3'], 33)).toEqual([
      ...['Q3 2025', 'Q1 2026', 'Q3'],
    ]);
  });

  test('a year under way at the left end gives way to the next where both would lie over each other', () => {
    expect(written(months(11, 30), 58).slice(0, 3)).toEqual(['12', '01 2017', '02']);
  });

  test('of more years than there is room for, every second or fifth is named', () => {
    expect(written(months(0, 240), 2.9)).toEqual(Array.from({ length: 10 }, (_, i) => `01 ${2016 + 2 * i}`));
    expect(written(months(0, 480), 1.45).map((one) => one.slice(3))).toEqual([
      ...['2020', '2025', '2030', '2035', '2040', '2045', '2050', '2055'],
    ]);
  });

  test('no two names and no two years lie over each other, whatever the months and their distance', () => {
    for (let first = 0; first < 12; first++)
      for (const step of [1.5, 3, 5.8, 11, 20, 60]) {
        const named = namedBelow(months(first, 150), step);
        const years = named.filter(({ year }) => year !== null);
        expect(years.length).toBeGreaterThan(0);
        for (const [places, room] of [
          [named, 58],
          [years, 64],
        ] as const)
          places.forEach(({ at }, i) =>
            expect(i === 0 || (at - (places[i - 1]?.at ?? 0)) * step >= room).toBe(true),
          );
      }
  });
});

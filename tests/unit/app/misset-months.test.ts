import { expect, test } from 'vitest';
import { missetMonths } from '@/app/technicians/_parts/misset-months';

const count = (month: string, gauge: string, setups: number, misset: number) => ({
  ...{ month, gauge, setups, misset },
});
const counts = [
  count('2025-03', 'C1', 4, 1),
  count('2025-03', 'C2', 6, 0),
  count('2025-05', 'C1', 2, 2),
  count('2025-06', 'C1', 3, 0),
];
const told = (held: Parameters<typeof missetMonths>[1]) =>
  missetMonths(counts, held).map(({ month, of, hits }) => [month, of, hits]);
const everything = { from: undefined, to: undefined, gauge: undefined };

test('months add up over gauges, and one in between without a setup is there', () => {
  expect(told(everything)).toEqual([
    ['2025-03', 10, 1],
    ['2025-04', 0, 0],
    ['2025-05', 2, 2],
    ['2025-06', 3, 0],
  ]);
});

test('months and a gauge can be asked for', () => {
  expect(told({ ...everything, from: '2025-05', to: '2025-05' })).toEqual([['2025-05', 2, 2]]);
  expect(told({ ...everything, gauge: 'C2' })).toEqual([['2025-03', 6, 0]]);
});

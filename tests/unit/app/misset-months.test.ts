import { expect, test } from 'vitest';
import { missetMonths } from '@/app/technicians/_parts/misset-months';
import type { StoredHeight } from '@/lib/store';

const height = (
  setup: string,
  at: number,
  gauge: number,
  change: Partial<StoredHeight> = {},
): StoredHeight => ({
  job: 'J1',
  stage: 'before',
  attempt: 1,
  setup,
  technician: 'T',
  gauge: 'C1',
  point: 'K',
  side: 'L',
  zero: false,
  deviation: 0,
  p: { neither: 1 - gauge, gauge, body: 0, both: 0 },
  misset: 0,
  body: 0,
  signature: null,
  hungAt: at,
  cause: null,
  ...change,
});

test('a setup counts once, mis-set when one of its sides likely is, in the month of the shop', () => {
  const points = missetMonths(
    [
      height('S1', Date.UTC(2025, 2, 31, 22, 30), 0.9),
      height('S1', Date.UTC(2025, 2, 31, 22, 30), 0.1, { side: 'R' }),
      height('S2', Date.UTC(2025, 2, 31, 23, 30), 0.1),
      height('Z1', Date.UTC(2025, 3, 2), 0.9, { zero: true }),
    ],
    'Europe/London',
  );
  // 23:30 UTC on 31 March is half past midnight on 1 April in London's summer time.
  expect(points.map(({ month, of, hits }) => [month, of, hits])).toEqual([
    ['2025-03', 1, 1],
    ['2025-04', 1, 0],
  ]);
});

import fc from 'fast-check';
import { DateTime } from 'luxon';
import { expect, test } from 'vitest';
import { monthOf } from '@/lib/measure/month-of';

const ZONES = [
  'UTC',
  'Europe/Berlin',
  'America/St_Johns',
  'Pacific/Auckland',
  'Pacific/Apia',
  'Asia/Kathmandu',
];

test('the month of a time is that of luxon, in every zone and at the edges of months', () => {
  const anyTime = fc.integer({ min: Date.UTC(1990, 0, 1), max: Date.UTC(2090, 0, 1) });
  const nearAMonth = fc
    .tuple(fc.integer({ min: 0, max: 1200 }), fc.integer({ min: -50_000_000, max: 50_000_000 }))
    .map(([month, off]) => Date.UTC(1990, month, 1) + off);
  fc.assert(
    fc.property(fc.oneof(anyTime, nearAMonth), fc.constantFrom(...ZONES), (at, zone) => {
      expect(monthOf(at, zone)).toBe(DateTime.fromMillis(at, { zone }).toFormat('yyyy-MM'));
    }),
    { seed: 3, numRuns: 2000 },
  );
});

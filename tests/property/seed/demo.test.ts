import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { readMeasurementFile, writeMeasurementFile } from '@/lib/measure';
import { demoShop } from '@/seed';

describe('demoShop', () => {
  it('is valid for other seed numbers, with as many jobs and about as many readings', async () => {
    await fc.assert(
      fc.asyncProperty(fc.integer(), async (seed) => {
        const { readings, shop } = demoShop(seed);
        const file = await readMeasurementFile(writeMeasurementFile(readings), {
          now: Date.parse('2026-11-14T00:00:00Z'),
          timeZone: shop.timeZone,
        });
        expect(file.faults).toEqual([]);
        expect(file.readings).toEqual(readings);
        expect(file.summary.jobs).toBe(360);
        expect(file.summary.technicians).toHaveLength(8);
        expect(Math.abs(readings.length - 39_000)).toBeLessThan(5_000);
      }),
      { seed: 20261113, numRuns: 2 },
    );
  });
});

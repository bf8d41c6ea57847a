import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { readMeasurementFile, writeMeasurementFile, type Reading } from '@/lib/measure';
import { generateGroup, type GroupPlan } from '@/seed';

async function readingsOf(
  seed: number,
  jobs: number,
  reading: NonNullable<GroupPlan['reading']>,
): Promise<Reading[]> {
  const readings: Reading[] = [];
  for await (const batch of generateGroup({ shops: 1, jobs, technicians: 3, seed, reading })) {
    readings.push(...batch.readings);
  }
  return readings;
}

describe('generated measurements', () => {
  it('are valid whatever the seed number', async () => {
    await fc.assert(
      fc.asyncProperty(
        fc.integer(),
        fc.integer({ min: 1, max: 12 }),
        fc.constantFrom('brief', 'usual', 'thorough'),
        async (seed, jobs, reading) => {
          const readings = await readingsOf(seed, jobs, reading);
          const file = await readMeasurementFile(writeMeasurementFile(readings), {
            now: Date.parse('2026-11-14T00:00:00Z'),
          });
          expect(file.faults).toEqual([]);
          expect(file.readings).toEqual(readings);
          expect(file.summary.jobs).toBe(jobs);
        },
      ),
      { seed: 20261113, numRuns: 40 },
    );
  });
});

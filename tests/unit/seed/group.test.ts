import { describe, expect, it } from 'vitest';
import { readMeasurementFile, writeMeasurementFile, type Reading } from '@/lib/measure';
import { generateGroup, type GroupBatch, type GroupPlan } from '@/seed';

const PLAN: GroupPlan = { shops: 3, jobs: 300, technicians: 10, seed: 1 };

async function batchesOf(plan: GroupPlan): Promise<GroupBatch[]> {
  const batches: GroupBatch[] = [];
  for await (const batch of generateGroup(plan)) batches.push(batch);
  return batches;
}

describe('generateGroup', () => {
  it('is the same for the same seed number, and another for another', async () => {
    const batches = await batchesOf(PLAN);
    expect(await batchesOf(PLAN)).toEqual(batches);
    expect(await batchesOf({ ...PLAN, seed: 2 })).not.toEqual(batches);
  });

  it('shares jobs and technicians out among the shops, under codes that are unique in the group', async () => {
    const batches = await batchesOf(PLAN);
    const of = (value: (reading: Reading) => string) => {
      const pairs = batches.flatMap((batch) => batch.readings.map((r) => `${value(r)} ${batch.shop}`));
      return [...new Set(pairs)].map((pair) => pair.split(' '));
    };
    const jobs = of((r) => r.job);
    expect(jobs).toHaveLength(300);
    for (const shop of ['S01', 'S02', 'S03']) expect(jobs.filter(([, s]) => s === shop)).toHaveLength(100);
    for (const codes of [jobs, of((r) => r.technician), of((r) => r.gauge)]) {
      expect(new Set(codes.map(([code]) => code)).size).toBe(codes.length);
    }
    expect(of((r) => r.technician)).toHaveLength(10);
  });

  it('makes a file for each shop that has no fault, over ten years', async () => {
    const batches = await batchesOf(PLAN);
    for (const shop of ['S01', 'S02', 'S03']) {
      const readings = batches.filter((batch) => batch.shop === shop).flatMap((batch) => batch.readings);
      const file = await readMeasurementFile(writeMeasurementFile(readings), {
        now: Date.parse('2026-11-14T00:00:00Z'),
      });
      expect(file.faults).toEqual([]);
      expect(file.readings).toEqual(readings);
      expect(new Date(file.summary.from ?? 0).getUTCFullYear()).toBeLessThanOrEqual(2017);
      expect(new Date(file.summary.to ?? 0).getUTCFullYear()).toBe(2026);
    }
  });

  it('keeps whole jobs together and hands batches on before they grow', async () => {
    const batches = await batchesOf({ ...PLAN, jobs: 1_000 });
    expect(batches.length).toBeGreaterThan(6);
    for (const { readings } of batches) expect(readings.length).toBeLessThan(5_500);
    const shopsOfJob = batches.flatMap((batch) => [...new Set(batch.readings.map((r) => r.job))]);
    expect(new Set(shopsOfJob).size).toBe(shopsOfJob.length);
  });

  it.each([
    ['brief', undefined, 52, 24],
    ['usual', 'usual', 84, 33],
    ['thorough', 'thorough', 125, 50],
  ] as const)('reads and sets up as often as it says where it is %s', async (_, reading, times, setups) => {
    const plan = reading === undefined ? PLAN : { ...PLAN, reading };
    const readings = (await batchesOf(plan)).flatMap((batch) => batch.readings);
    expect(Math.abs(readings.length / 300 / times - 1)).toBeLessThan(0.1);
    const set = new Set(readings.map((r) => `${r.job} ${r.stage} ${r.attempt} ${r.setup}`));
    expect(Math.abs(set.size / 300 / setups - 1)).toBeLessThan(0.1);
  });

  it('refuses more jobs than the days have room for', async () => {
    await expect(batchesOf({ ...PLAN, jobs: 13_501 })).rejects.toThrow(
      '13501 jobs are more than 3 shops can measure in ten years: plan 4500 a shop at most.',
    );
  });

  it('refuses a group with a shop that has nobody to measure', async () => {
    await expect(batchesOf({ ...PLAN, technicians: 2 })).rejects.toThrow(
      '2 technicians cannot staff 3 shops: give each shop one at least.',
    );
  });
});

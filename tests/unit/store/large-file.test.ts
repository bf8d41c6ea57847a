import { createHash } from 'node:crypto';
import { expect, it } from 'vitest';
import { collapse, readMeasurementFile, writeMeasurementFile } from '@/lib/measure';
import { countJobs, loadJobs, saveReadings } from '@/lib/store';
import { freshStore } from './fresh-store';
import { regularShop } from './invented-readings';

const store = freshStore();

it('a file of 200,000 lines is stored as it is, and adds nothing the second time', async () => {
  const text = writeMeasurementFile(regularShop(6_250));
  const { readings, faults, summary } = await readMeasurementFile(text, { name: 'large.csv' });
  expect(faults).toEqual([]);
  expect(readings).toHaveLength(200_000);
  const file = {
    name: 'large.csv',
    sha256: createHash('sha256').update(text).digest('hex'),
    lines: summary.lines,
  };
  expect(await saveReadings(store.shop, readings, file)).toMatchObject({ added: 200_000, newJobs: 6_250 });
  expect(await saveReadings(store.shop, readings, file)).toMatchObject({ added: 0, alreadyThere: 200_000 });
  expect(await countJobs(store.shop)).toBe(6_250);
  const wanted = collapse(readings);
  const loaded = await loadJobs(store.shop);
  expect(loaded).toHaveLength(wanted.length);
  // One by one: a difference is then shown as one job, not as all of them.
  for (const [index, job] of loaded.entries()) expect(job).toEqual(wanted[index]);
});

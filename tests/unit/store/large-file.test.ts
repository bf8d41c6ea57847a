import { createHash } from 'node:crypto';
import { expect, it } from 'vitest';
import { collapse, readMeasurementFile, writeMeasurementFile } from '@/lib/measure';
import { countJobs, loadJobs, saveReadings } from '@/lib/store';
import { freshStore } from './fresh-store';
import { BY_COMMAND, regularShop } from './invented-readings';

const store = freshStore();

/** More jobs, and many more readings, than travel to the database at once. */
const JOBS = 5_100;
const READINGS = JOBS * 3;

it('a file of more jobs than one statement takes is stored as it is, and adds nothing the second time', async () => {
  // Of each job three readings of its zero stations: what counts here is how many there are.
  const shop = regularShop(JOBS).filter(
    ({ stage, setup, side, repeat }) =>
      stage === 'before' && side === 'L' && (setup === 'before-1' || (setup === 'before-2' && repeat === 1)),
  );
  const text = writeMeasurementFile(shop);
  const { readings, faults, summary } = await readMeasurementFile(text, { name: 'large.csv' });
  expect(faults).toEqual([]);
  expect(readings).toHaveLength(READINGS);
  const file = {
    name: 'large.csv',
    sha256: createHash('sha256').update(text).digest('hex'),
    lines: summary.lines,
  };
  expect(await saveReadings(store.shop, readings, file, BY_COMMAND)).toMatchObject({
    added: READINGS,
    newJobs: JOBS,
  });
  expect(await saveReadings(store.shop, readings, file, BY_COMMAND)).toMatchObject({
    added: 0,
    alreadyThere: READINGS,
  });
  expect(await countJobs(store.shop)).toBe(JOBS);
  const wanted = collapse(readings);
  const loaded = await loadJobs(store.shop);
  expect(loaded).toHaveLength(wanted.length);
  // One by one: a difference is then shown as one job, not as all of them.
  for (const [index, job] of loaded.entries()) expect(job).toEqual(wanted[index]);
});

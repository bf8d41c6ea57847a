import { beforeEach, expect, it } from 'vitest';
import type { Reading } from '@/lib/measure';
import { loadJobs, provedHeights, recordOutcome, roundsWithoutProof, saveReadings } from '@/lib/store';
import { currentLearned, roundVerdicts } from '@/lib/refresh';
import { refresh } from '@/lib/refresh/refresh';
import { freshStore } from '@/tests/unit/store/fresh-store';
import { BY_COMMAND, fileNamed, regularShop } from '@/tests/unit/store/invented-readings';

const store = freshStore();
const SHOP = regularShop(4);

/** The front gauge of the first job is hung again, and reads the sheet's value. */
const hungAgain = (job: string): Reading[] =>
  SHOP.filter((one) => one.job === job && one.setup === 'before-0' && one.repeat === 1).map((one, i) => ({
    ...one,
    line: i + 2,
    setup: 'before-0-again',
    takenAt: one.takenAt + 19 * 60_000,
    value: 300.3,
  }));

beforeEach(async () => {
  await saveReadings(store.shop, SHOP, fileNamed('shop.csv'), BY_COMMAND);
  await refresh(store.shop, 'this program');
});

it('a recorded outcome reaches the readings, the verdict, what is learned, and the proofs', async () => {
  const judged = async () => {
    const [verdict] = (await roundVerdicts(store.shop, { job: 'J000001' })).filter(
      (one) => one.stage === 'before',
    );
    return verdict?.heights.find(({ setup, side }) => setup === 'before-0' && side === 'L')?.p;
  };
  const before = await judged();
  expect(await provedHeights(store.shop)).toEqual([]);
  await recordOutcome(
    store.shop,
    {
      ...{ job: 'J000001', setup: 'before-0', side: 'L', cause: 'gauge', by: 'T1', note: 'hung again' },
    },
    BY_COMMAND,
  );
  const [job] = await loadJobs(store.shop, { jobs: ['J000001'] });
  expect(job?.rounds[0]?.setups[0]?.observations[0]?.cause).toBe('gauge');
  expect((await currentLearned(store.shop))?.stale).toBe(true);
  const rate = async () => (await currentLearned(store.shop))?.learned.technicians.T1?.missetRate ?? 0;
  const missetRate = await rate();

  await refresh(store.shop, 'this program');
  const after = await judged();
  expect(after?.gauge).toBeGreaterThan(0.5);
  expect(after?.gauge).toBeGreaterThan(before?.gauge ?? 1);
  expect(await rate()).toBeGreaterThan(missetRate);
  expect(await provedHeights(store.shop)).toEqual([
    expect.objectContaining({ job: 'J000001', proved: 'gauge', by: 'recorded', ahead: true, p: before }),
  ]);
});

it('a gauge that was hung again is a proof by itself, foretold by the fit that had not seen it', async () => {
  await saveReadings(store.shop, hungAgain('J000002'), fileNamed('again.csv'), BY_COMMAND);
  await refresh(store.shop, 'this program');
  const proved = await provedHeights(store.shop);
  expect(proved.map(({ job, by, ahead }) => [job, by, ahead])).toEqual([
    ['J000002', 'rehang', true],
    ['J000002', 'rehang', true],
  ]);
});

it('what was said stays as it was said: neither a later fit nor another program changes it', async () => {
  await saveReadings(store.shop, hungAgain('J000002'), fileNamed('again.csv'), BY_COMMAND);
  await refresh(store.shop, 'this program');
  const proved = await provedHeights(store.shop);
  await saveReadings(store.shop, hungAgain('J000000'), fileNamed('more.csv'), BY_COMMAND);
  await refresh(store.shop, 'a later program');
  expect((await provedHeights(store.shop)).filter(({ job }) => job === 'J000002')).toEqual(proved);
  // The later program has no fit of its own from before.
  expect((await provedHeights(store.shop)).find(({ job }) => job === 'J000000')?.ahead).toBe(false);
  expect(await roundsWithoutProof(store.shop, 1)).toEqual([]);
});

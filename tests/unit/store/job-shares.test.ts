import { expect, it } from 'vitest';
import {
  fitAnswer,
  jobShares,
  jobsInOrder,
  jobsWithoutShare,
  saveFit,
  saveFitAnswers,
  saveJobShares,
  saveReadings,
} from '@/lib/store';
import { freshStore } from './fresh-store';
import { BY_COMMAND, fileNamed, regularShop } from './invented-readings';

const store = freshStore();

it('shares wait where job, fit or calculation changed, and are told in the order of the jobs', async () => {
  const readings = regularShop(3);
  await saveReadings(store.shop, readings, fileNamed('three.csv'), BY_COMMAND);
  const [fit, other] = [await newFit(), await newFit()];
  const waiting = async (id = fit, madeBy = 'now') =>
    (await jobsWithoutShare(store.shop, id, madeBy)).map(({ job }) => job);
  const told = async (jobs?: string[]) => {
    const documents: unknown[] = [];
    for await (const document of jobShares(store.shop, jobs)) documents.push(document);
    return documents;
  };
  const versions = await jobsWithoutShare(store.shop, fit, 'now');
  expect(versions).toEqual(
    ['J000000', 'J000001', 'J000002'].map((job) => ({ job, version: 1, older: false })),
  );

  await saveJobShares(
    store.shop,
    fit,
    'now',
    versions.toReversed().map((one) => ({ ...one, document: { of: one.job } })),
  );
  expect(await told()).toEqual([{ of: 'J000000' }, { of: 'J000001' }, { of: 'J000002' }]);
  expect(await told(['J000002', 'J9'])).toEqual([{ of: 'J000002' }]);
  expect(await waiting()).toEqual([]);
  expect(await waiting(other)).toHaveLength(3);
  expect(await waiting(fit, 'otherwise')).toHaveLength(3);

  expect(await jobsInOrder(store.shop, ['J000002', 'J9', 'J000000'])).toEqual(['J000000', 'J000002']);

  const again = readings
    .filter(({ job, repeat }) => job === 'J000001' && repeat === 1)
    .map((one) => ({ ...one, repeat: 9, takenAt: one.takenAt + 1 }));
  await saveReadings(store.shop, again, fileNamed('again.csv'), BY_COMMAND);
  const changed = (older: boolean) => [{ job: 'J000001', version: 2, older }];
  expect(await jobsWithoutShare(store.shop, fit, 'now')).toEqual(changed(true));
  expect(await jobsWithoutShare(store.shop, other, 'now', 'J000001')).toEqual(changed(false));
  expect(await jobsWithoutShare(store.shop, fit, 'otherwise', 'J000001')).toEqual(changed(false));
  await saveFitAnswers(store.shop, fit, { 'made-from': 1, rates: 2 });
  await saveJobShares(
    store.shop,
    fit,
    'now',
    [{ job: 'J000001', version: 2, document: 'newer' }],
    ['made-from'],
  );
  expect(await told(['J000001'])).toEqual(['newer']);
  // What rests on the shares does not outlast them.
  expect(await fitAnswer(store.shop, 'made-from')).toBeNull();
  expect(await fitAnswer(store.shop, 'rates')).toBe(2);
  await saveJobShares(store.shop, fit, 'now', [{ job: 'J000001', version: 2, document: null }]);
  expect(await told()).toHaveLength(2);
  await saveJobShares(store.shop, 4711, 'now', [{ job: 'J000000', version: 1, document: 'of no fit' }]);
  expect(await told(['J000000'])).toEqual([{ of: 'J000000' }]);
});

const newFit = async () => (await saveFit(store.shop, { inputsVersion: 1, parameters: {}, figures: {} })).id;

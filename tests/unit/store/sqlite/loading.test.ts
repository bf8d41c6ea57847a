import { expect, it } from 'vitest';
import { countJobs } from '@/lib/store';
import { loading, transaction } from '@/lib/store/connection/database';
import type { Rows } from '@/lib/store/sql/rows';
import { freshStore } from '@/tests/unit/store/fresh-store';

const store = freshStore();

const WITH_OTHERS = { shutOut: false };

/** A job of a sheet and a technician that are not there, seen by so many attempts. */
async function writeJobOfNothing(rows: Rows, attempts = 1): Promise<void> {
  const jobs = rows.into('Job', [
    ...['shopId', 'number', 'sheetId', 'searchText', 'openedAt', 'lastReadAt', 'lastStage', 'lastAttempt'],
    ...['technicianId', 'roundCount', 'setupCount', 'readingCount'],
  ]);
  const at = '2026-03-02T08:00:00.000+00:00';
  jobs.add(store.shop, 'J1', 999, 'j1', at, at, 'before', attempts, 999, 1, 1, 1);
  await jobs.flush();
}

it('a load whose rows refer to nothing keeps none of them, though references are not looked up row by row', async () => {
  let written = false;
  const load = loading(store.shop, WITH_OTHERS, async (_, rows) => {
    await writeJobOfNothing(rows);
    written = true;
    return { result: null, sound: ['Setup'] };
  });
  await expect(load).rejects.toThrow(/nothing was stored/);
  expect(written).toBe(true);
  expect(await countJobs(store.shop)).toBe(0);
});

it('references are looked up row by row again after a load, and by who writes while one is waited for', async () => {
  const refused = () => transaction(store.shop, (_, rows) => writeJobOfNothing(rows));
  const load = loading(store.shop, WITH_OTHERS, () => Promise.resolve({ result: 'loaded', sound: [] }));
  const meanwhile = refused();
  await expect(meanwhile).rejects.toThrow(/FOREIGN KEY/);
  expect(await load).toBe('loaded');
  await expect(refused()).rejects.toThrow(/FOREIGN KEY/);
});

it('a load whose rows break a CHECK keeps none of them, though they are asked of all rows together', async () => {
  const load = loading(store.shop, WITH_OTHERS, async (_, rows) => {
    await rows.withoutIndexes(['Setup'], ['Setup'], () => writeJobOfNothing(rows, 0));
    return { result: null, sound: ['Job'] };
  });
  await expect(load).rejects.toThrow(/Job break a rule.*nothing was stored/);
  expect(await countJobs(store.shop)).toBe(0);
  const refused = transaction(store.shop, (_, rows) => writeJobOfNothing(rows, 0));
  await expect(refused).rejects.toThrow(/CHECK/);
});

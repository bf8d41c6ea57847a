import pg from 'pg';
import { expect, it } from 'vitest';
import { database, transaction } from '@/lib/store/connection/database';
import { freshStore } from '@/tests/unit/store/fresh-store';

const store = freshStore();

const keys = async () => ({
  constraints: await database().$queryRaw<unknown[]>`
    SELECT "conname", "convalidated", pg_get_constraintdef("oid") AS "definition" FROM pg_constraint ORDER BY 1, 3`,
  indexes: await database().$queryRaw<unknown[]>`
    SELECT pg_get_indexdef("indexrelid") AS "definition", "indisprimary", "indisvalid" FROM pg_index
    WHERE "indrelid"::regclass::text LIKE '"%' ORDER BY 1`,
});

/** Adds setups of a job, round, technician and gauge that are not there; says whether the server took them at first. */
async function addSetupsOfNothing(labels = ['B1-01']): Promise<{ taken: boolean; error: unknown }> {
  let taken = false;
  const adding = transaction(store.shop, (_, rows) =>
    rows.withoutIndexes(['Setup'], [], async () => {
      const columns = ['shopId', 'jobId', 'roundId', 'label', 'technicianId', 'gaugeId', 'hungAt'];
      const setups = rows.into('Setup', columns);
      for (const label of labels) setups.add([store.shop, 999, 999, label, 999, 999, rows.time(0)]);
      await setups.flush();
      await rows.settled();
      taken = true;
    }),
  );
  const error = await adding.then(
    () => null,
    (reason: unknown) => reason,
  );
  return { taken, error };
}

it('a server without anybody else looks references up at the end of a load, and keeps none of it where one is missing', async () => {
  const before = await keys();
  const { taken, error } = await addSetupsOfNothing();
  expect(taken).toBe(true);
  expect(String(error)).toMatch(/Setup_.*_fkey/);
  expect(await database().setup.count()).toBe(0);
  expect(await keys()).toEqual(before);
});

it('a server without anybody else finds rows that are there twice at the end of a load, and keeps none of it', async () => {
  const before = await keys();
  const { taken, error } = await addSetupsOfNothing(['B1-01', 'B1-02', 'B1-01']);
  expect(taken).toBe(true);
  expect(String(error)).toMatch(/Setup_jobId_label_key/);
  expect(await database().setup.count()).toBe(0);
  expect(await keys()).toEqual(before);
});

it('a server has all keys, indexes and references again after a load without them, as they were', async () => {
  const before = await keys();
  const all = ['Setup', 'Observation', 'Reading', 'Round', 'JobTechnician', 'JobOutcome', 'RecheckOutcome'];
  const during = await transaction(store.shop, async (queries, rows) => {
    let left: unknown[] = [];
    await rows.withoutIndexes(all, [], async () => {
      left = await queries.$queryRaw`
        SELECT 1 FROM pg_index WHERE "indrelid" IN ('"Setup"'::regclass, '"Reading"'::regclass, '"Round"'::regclass)`;
    });
    return left;
  });
  expect(during).toEqual([]);
  expect(await keys()).toEqual(before);
});

it('a server that others are connected to looks references up row by row, and they wait for nothing', async () => {
  const other = new pg.Client(store.url);
  await other.connect();
  try {
    const { taken, error } = await addSetupsOfNothing();
    expect(taken).toBe(false);
    expect(String(error)).toMatch(/Setup_.*_fkey/);
  } finally {
    await other.end();
  }
});

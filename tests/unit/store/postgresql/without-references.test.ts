import pg from 'pg';
import { expect, it } from 'vitest';
import { database, transaction } from '@/lib/store/connection/database';
import { freshStore } from '@/tests/unit/store/fresh-store';

const store = freshStore();

const constraints = () => database().$queryRaw<unknown[]>`
  SELECT "conname", "convalidated", pg_get_constraintdef("oid") AS "definition" FROM pg_constraint ORDER BY 1, 3`;

/** Adds a setup of a job, round, technician and gauge that are not there; says whether the server took it at first. */
async function addSetupOfNothing(): Promise<{ taken: boolean; error: unknown }> {
  let taken = false;
  const adding = transaction(store.shop, (_, rows) =>
    rows.withoutIndexes(['Setup'], [], async () => {
      const columns = ['shopId', 'jobId', 'roundId', 'label', 'technicianId', 'gaugeId', 'hungAt'];
      const setups = rows.into('Setup', columns);
      setups.add([store.shop, 999, 999, 'B1-01', 999, 999, rows.time(0)]);
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
  const before = await constraints();
  const { taken, error } = await addSetupOfNothing();
  expect(taken).toBe(true);
  expect(String(error)).toMatch(/Setup_.*_fkey/);
  expect(await database().setup.count()).toBe(0);
  expect(await constraints()).toEqual(before);
});

it('a server that others are connected to looks references up row by row, and they wait for nothing', async () => {
  const other = new pg.Client(store.url);
  await other.connect();
  try {
    const { taken, error } = await addSetupOfNothing();
    expect(taken).toBe(false);
    expect(String(error)).toMatch(/Setup_.*_fkey/);
  } finally {
    await other.end();
  }
});

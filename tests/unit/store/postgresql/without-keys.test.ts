import { randomUUID } from 'node:crypto';
import pg from 'pg';
import { afterEach, beforeEach, describe, expect, it } from 'vitest';
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

/**
 * Adds setups of a job, round, technician and gauge that are not there; says whether the server took them at first.
 * @param role whom the server takes for the one who adds them, if another than who is connected.
 */
async function addSetupsOfNothing(
  labels = ['B1-01'],
  role?: string,
): Promise<{ taken: boolean; error: unknown }> {
  let taken = false;
  const adding = transaction(store.shop, async (queries, rows) => {
    if (role !== undefined) await queries.$executeRawUnsafe(`SET LOCAL ROLE "${role}"`);
    await rows.withoutIndexes(['Setup'], [], async () => {
      const columns = ['shopId', 'jobId', 'roundId', 'label', 'technicianId', 'gaugeId', 'hungAt'];
      const setups = rows.into('Setup', columns);
      for (const label of labels) setups.add(store.shop, 999, 999, label, 999, 999, rows.time(0));
      await setups.flush();
      await rows.settled();
      taken = true;
    });
  });
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

/** Does something while somebody else is connected, too. */
async function besideOther<Result>(does: (other: pg.Client) => Promise<Result>): Promise<Result> {
  const other = new pg.Client(store.url);
  await other.connect();
  try {
    return await does(other);
  } finally {
    await other.end();
  }
}

it('a server that others are connected to looks references up at the end of a load, and keeps none of it where one is missing', async () => {
  const before = await keys();
  const { taken, error } = await besideOther(() => addSetupsOfNothing());
  expect(taken).toBe(true);
  expect(String(error)).toMatch(/refers to nothing: Setup_.*_fkey/);
  expect(await database().setup.count()).toBe(0);
  expect(await keys()).toEqual(before);
});

it('a server that others are connected to finds rows that are there twice', async () => {
  const { error } = await besideOther(() => addSetupsOfNothing(['B1-01', 'B1-02', 'B1-01']));
  expect(String(error)).toMatch(/Setup_jobId_label_key/);
  expect(await database().setup.count()).toBe(0);
});

it('whoever else is connected reads the tables during a load, after which references are looked up at once again', async () => {
  await besideOther(async (other) => {
    const rows = await transaction(store.shop, async (queries, of) => {
      let read: unknown[] = [];
      await of.withoutIndexes(['Setup'], [], async () => {
        read = (await other.query('SELECT count(*)::int AS "setups" FROM "Setup"')).rows;
      });
      const [role] = await queries.$queryRaw<{ role: string }[]>`
        SELECT current_setting('session_replication_role') AS "role"`;
      expect(role?.role).toBe('origin');
      return read;
    });
    expect(rows).toEqual([{ setups: 0 }]);
  });
});

describe('by a role that may change rows, and nothing else', () => {
  const role = `plain_${randomUUID().replaceAll('-', '')}`;

  const asAdmin = (sql: string[]) =>
    besideOther(async (other) => {
      for (const one of sql) await other.query(one);
    });

  beforeEach(() =>
    asAdmin([
      `CREATE ROLE "${role}"`,
      `GRANT ALL ON ALL TABLES IN SCHEMA public TO "${role}"`,
      `GRANT ALL ON ALL SEQUENCES IN SCHEMA public TO "${role}"`,
    ]),
  );
  afterEach(() => asAdmin([`DROP OWNED BY "${role}"`, `DROP ROLE "${role}"`]));

  it('references are looked up row by row, alone', async () => {
    const { taken, error } = await addSetupsOfNothing(['B1-01'], role);
    expect(taken).toBe(false);
    expect(String(error)).toMatch(/Setup_.*_fkey/);
  });

  it('references are looked up row by row, beside others', async () => {
    const { taken, error } = await besideOther(() => addSetupsOfNothing(['B1-01'], role));
    expect(taken).toBe(false);
    expect(String(error)).toMatch(/Setup_.*_fkey/);
  });
});

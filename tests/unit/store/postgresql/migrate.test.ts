import { randomUUID } from 'node:crypto';
import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import pg from 'pg';
import { afterAll, beforeAll, beforeEach, describe, expect, inject, it } from 'vitest';
import { closeStore, getShop, saveReadings } from '@/lib/store';
import { database } from '@/lib/store/connection/database';
import { migrate } from '@/lib/store/migrations/migrate';
import { migrationNames, migrationsFolder } from '@/lib/store/migrations/migration-list';
import { BY_COMMAND, fileNamed, regularShop } from '@/tests/unit/store/invented-readings';

const address = inject('postgresql');
const admin = new pg.Client(`${address ?? 'postgresql://nowhere'}/postgres`);
let url = '';

const sqlOf = (name: string) =>
  readFileSync(join(migrationsFolder('postgresql'), name, 'migration.sql'), 'utf8');

/** Runs a statement on the database of the test. */
async function ask(sql: string): Promise<unknown[]> {
  const client = new pg.Client(url);
  await client.connect();
  const { rows } = await client.query<Record<string, unknown>>(sql).finally(() => client.end());
  return ((rows as Record<string, unknown>[] | undefined) ?? []).map((row) => Object.values(row)[0]);
}

describe.skipIf(address === null)('migrations on a PostgreSQL server', () => {
  beforeAll(() => admin.connect());
  afterAll(async () => {
    await closeStore();
    await admin.end();
  });
  beforeEach(async () => {
    const name = `migrate_${randomUUID().replaceAll('-', '')}`;
    await admin.query(`CREATE DATABASE "${name}"`);
    url = `${address ?? ''}/${name}`;
  });

  it('make all tables in an empty database, and change nothing when they run again', async () => {
    expect(await migrate(url)).toEqual(migrationNames('postgresql'));
    expect(await migrate(url)).toEqual([]);
    process.env.DATABASE_URL = url;
    const shop = await getShop();
    expect(await saveReadings(shop.id, regularShop(1), fileNamed('one.csv'), BY_COMMAND)).toMatchObject({
      newJobs: 1,
    });
  });

  it('leave no text in an order of the server’s own', async () => {
    await migrate(url);
    const others = await ask(`SELECT table_name || '.' || column_name FROM information_schema.columns
      WHERE table_schema = 'public' AND table_name NOT LIKE '\\_%' AND data_type = 'text' AND collation_name <> 'C'`);
    expect(others).toEqual([]);
  });

  it('hold every CHECK that SQLite holds', async () => {
    await migrate(url);
    process.env.DATABASE_URL = url;
    await getShop();
    await expect(database().$executeRawUnsafe(`UPDATE "Shop" SET "defaultTolerance" = 0`)).rejects.toThrow(
      /check/,
    );
    await closeStore();
  });

  it('run once where two processes start them at the same time', async () => {
    const [one, other] = await Promise.all([migrate(url), migrate(url)]);
    expect([...one, ...other]).toEqual(migrationNames('postgresql'));
  });

  it('leave a database as it was when one fails, and succeed when the cause is gone', async () => {
    await ask('CREATE TABLE "Setup" (id int)');
    await expect(migrate(url)).rejects.toThrow();
    expect(
      await ask(`SELECT count(*)::int FROM information_schema.tables WHERE table_name = 'Shop'`),
    ).toEqual([0]);
    await ask('DROP TABLE "Setup"');
    expect(await migrate(url)).toEqual(migrationNames('postgresql'));
  });

  it('tell a straight length from its diagonal in a database that was filled before they could', async () => {
    const all = migrationNames('postgresql');
    const change = all.findIndex((name) => name.endsWith('_straight_and_diagonal'));
    for (const name of all.slice(0, change)) await ask(sqlOf(name));
    await ask(`INSERT INTO "Shop" ("id", "name", "timeZone") VALUES (1, 'One', 'UTC');
      INSERT INTO "Sheet" ("id", "shopId", "name") VALUES (1, 1, 'S1');
      INSERT INTO "Dimension" VALUES (5, 1, 'length', 'B-C', '', NULL, NULL, false, 1452.5, 3),
        (6, 1, 'height', 'B', 'L', 'front', 300, false, 250, 3);`);
    for (const name of all.slice(change)) await ask(sqlOf(name));
    expect(await ask('SELECT "named" FROM "Dimension" ORDER BY "id"')).toEqual([1452.5, 0]);
  });
});

import { existsSync, mkdtempSync, readFileSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import Database from 'better-sqlite3';
import { afterAll, describe, expect, it } from 'vitest';
import { schemaFor } from '@/lib/commands/generate.mjs';
import { migrate } from '@/lib/store/migrations/migrate';
import { lastSchema, migrationNames, migrationsFolder } from '@/lib/store/migrations/migration-list';
import { migrated } from '@/tests/migrated';
import { byTheEngine } from './by-the-engine';

const folder = mkdtempSync(join(tmpdir(), 'rehang-migrate-'));
afterAll(() => rmSync(folder, { recursive: true, force: true }));

const tables = (path: string) => {
  const database = new Database(path);
  const names = database
    .prepare(`SELECT sql FROM sqlite_master WHERE name NOT LIKE 'sqlite_%' ORDER BY name`)
    .pluck();
  const found = names.all();
  database.close();
  return found;
};

/** All that a file says of its tables, and of the migrations that made them; not when they were made. */
const described = (path: string) => {
  const database = new Database(path, { readonly: true });
  const rows = (sql: string) => database.prepare(sql).all();
  const told = {
    tables: rows('SELECT "type", "name", "tbl_name", "sql" FROM sqlite_master ORDER BY "type", "name"'),
    sequences: rows('SELECT * FROM sqlite_sequence ORDER BY "name"'),
    settings: ['encoding', 'page_size', 'auto_vacuum', 'user_version', 'journal_mode'].map((name) =>
      database.pragma(name),
    ),
    migrations: rows(
      `SELECT "migration_name", "checksum", "logs", "rolled_back_at", "applied_steps_count", length("id") AS "id",
        "finished_at" GLOB '????-??-??T??:??:??.???+00:00' AS "finished",
        "started_at" GLOB '????-??-??T??:??:??.???+00:00' AS "started"
      FROM "_prisma_migrations" ORDER BY rowid`,
    ),
  };
  database.close();
  return told;
};

/** A comment can be mended without a migration. */
const withoutComments = (schema: string) => schema.replace(/^[ \t]*\/\/.*\n/gm, '').replace(/ +/g, ' ');

const sqlOf = (name: string) => readFileSync(join(migrationsFolder('sqlite'), name, 'migration.sql'), 'utf8');

describe('migrations', () => {
  it('make the database from nothing, its folder included, in write-ahead mode', async () => {
    const path = join(folder, 'new', 'shop.db');
    expect(await migrate(`file:${path}`)).toEqual(migrationNames('sqlite'));
    expect(existsSync(path)).toBe(true);
    const database = new Database(path);
    expect(database.pragma('journal_mode', { simple: true })).toBe('wal');
    database.close();
  });

  it('make of a file that holds nothing at once what the engine makes one by one', async () => {
    const [atOnce, oneByOne] = [join(folder, 'at-once.db'), join(folder, 'one-by-one.db')];
    expect(await migrate(`file:${atOnce}`)).toEqual(migrationNames('sqlite'));
    await byTheEngine(oneByOne);
    expect(described(atOnce)).toEqual(described(oneByOne));
    expect(described(atOnce).migrations).toHaveLength(migrationNames('sqlite').length);
    expect(await migrate(`file:${atOnce}`)).toEqual([]);
  });

  it('are made once where several programs find the file empty', async () => {
    const url = `file:${join(folder, 'several.db')}`;
    const all = await Promise.all([1, 2, 3].map(() => migrated(url)));
    expect(all).toHaveLength(3);
    expect(await migrate(url)).toEqual([]);
  });

  it('change nothing when they run again', async () => {
    const path = join(folder, 'twice.db');
    await migrate(`file:${path}`);
    const before = tables(path);
    expect(await migrate(`file:${path}`)).toEqual([]);
    expect(tables(path)).toEqual(before);
  });

  it('are there for the present models, in both databases', () => {
    expect(migrationNames('postgresql')).toEqual(migrationNames('sqlite'));
    for (const engine of ['sqlite', 'postgresql'] as const)
      expect(withoutComments(lastSchema(engine) ?? '')).toBe(withoutComments(schemaFor(engine)));
  });

  it('leave a database as it was when one fails, and succeed when the cause is gone', async () => {
    const path = join(folder, 'failing.db');
    const database = new Database(path);
    database.exec('CREATE TABLE "Setup" (id INTEGER)');
    database.close();
    const before = tables(path);
    await expect(migrate(`file:${path}`)).rejects.toThrow();
    const after = new Database(path);
    const left = after
      .prepare(`SELECT count(*) FROM sqlite_master WHERE name IN ('Shop', 'Person', 'Job')`)
      .pluck();
    expect(left.get()).toBe(0);
    after.exec('DROP TABLE "Setup"');
    after.close();
    expect(before).toHaveLength(1);
    expect(await migrate(`file:${path}`)).toEqual(migrationNames('sqlite'));
  });

  it('keep every time of a database that was filled while times were texts', () => {
    const database = new Database(join(folder, 'texts.db'));
    const all = migrationNames('sqlite');
    const change = all.findIndex((name) => name.endsWith('_times_as_numbers'));
    for (const name of all.slice(0, change)) database.exec(sqlOf(name));
    const times = ['1969-12-31T23:59:59.999+00:00', '2024-02-29T06:30:45.007+00:00', '2026-11-26 10:15:00'];
    database.exec(`INSERT INTO "Shop" ("id", "name", "timeZone") VALUES (1, 'One', 'UTC');
      INSERT INTO "Person" ("id", "shopId", "code", "name", "role") VALUES (1, 1, 'T', '', 'technician');`);
    for (const [id, time] of times.entries())
      database.exec(`INSERT INTO "MissCost" VALUES (${id}, 1, 9, NULL, '${time}');
        INSERT INTO "Trace" ("id", "shopId", "at", "via", "action", "kind", "subject")
        VALUES (${id}, 1, '${time}', 'page', 'did', 'thing', '1')`);
    for (const name of all.slice(change)) database.exec(sqlOf(name));
    const kept = (table: string) =>
      database.prepare(`SELECT "at" FROM "${table}" ORDER BY "id"`).pluck().all();
    const expected = times.map((time) => new Date(time.includes('T') ? time : `${time}Z`).getTime());
    expect(kept('MissCost')).toEqual(expected);
    expect(kept('Trace')).toEqual(expected);
    expect(database.prepare('SELECT "removedAt" FROM "Person"').pluck().get()).toBeNull();
    expect(() => database.exec(`UPDATE "Trace" SET "at" = 0`)).toThrow(/only ever added/);
    database.close();
  });

  it('tell a straight length from its diagonal in a database that was filled before they could', () => {
    const database = new Database(join(folder, 'earlier.db'));
    const all = migrationNames('sqlite');
    const change = all.findIndex((name) => name.endsWith('_straight_and_diagonal'));
    for (const name of all.slice(0, change)) database.exec(sqlOf(name));
    database.exec(`INSERT INTO "Shop" ("id", "name", "timeZone") VALUES (1, 'One', 'UTC');
      INSERT INTO "Sheet" ("id", "shopId", "name") VALUES (1, 1, 'S1');
      INSERT INTO "Dimension" VALUES (5, 1, 'length', 'B-C', '', NULL, NULL, 0, 1452.5, 3),
        (6, 1, 'height', 'B', 'L', 'front', 300, 0, 250, 3);`);
    for (const name of all.slice(change)) database.exec(sqlOf(name));
    const named = database.prepare('SELECT "id", "nominal", "named" FROM "Dimension" ORDER BY "id"').raw();
    expect(named.all()).toEqual([
      [5, 1452.5, 1452.5],
      [6, 250, 0],
    ]);
    const again = (point: string, value: number) =>
      database.exec(
        `INSERT INTO "Dimension" VALUES (NULL, 1, 'length', '${point}', '', NULL, NULL, 0, ${value}, 3, ${value})`,
      );
    expect(() => again('B-C', 1452.5)).toThrow(/UNIQUE/);
    expect(() => again('B-C', 1791)).not.toThrow();
    database.close();
  });
});

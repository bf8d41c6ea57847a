import { existsSync, mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import Database from 'better-sqlite3';
import { afterAll, describe, expect, it } from 'vitest';
import { schemaFor } from '@/lib/commands/generate.mjs';
import { migrate } from '@/lib/store/migrations/migrate';
import { lastSchema, migrationNames } from '@/lib/store/migrations/migration-list';

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

describe('migrations', () => {
  it('make the database from nothing, its folder included, in write-ahead mode', async () => {
    const path = join(folder, 'new', 'shop.db');
    expect(await migrate(`file:${path}`)).toEqual(migrationNames('sqlite'));
    expect(existsSync(path)).toBe(true);
    const database = new Database(path);
    expect(database.pragma('journal_mode', { simple: true })).toBe('wal');
    database.close();
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
      expect(lastSchema(engine)).toBe(schemaFor(engine));
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

  it('refuse a PostgreSQL address in words', async () => {
    await expect(migrate('postgresql://someone:secret@db/shop')).rejects.toThrow(/SQLite only/);
  });
});

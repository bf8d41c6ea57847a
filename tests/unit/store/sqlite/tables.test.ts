import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import Database from 'better-sqlite3';
import { afterAll, describe, expect, it } from 'vitest';
import { tablesOf } from '@/lib/store/copying/tables';
import { migrate } from '@/lib/store/migrations/migrate';
import { lastSchema } from '@/lib/store/migrations/migration-list';

const folder = mkdtempSync(join(tmpdir(), 'rehang-tables-'));
afterAll(() => rmSync(folder, { recursive: true, force: true }));

describe('what is copied', () => {
  it('is every table of the database with every column and its key, each after those it refers to', async () => {
    const path = join(folder, 'shop.db');
    await migrate(`file:${path}`);
    const database = new Database(path);
    const names = database
      .prepare(
        `SELECT name FROM sqlite_master WHERE type = 'table' AND name NOT LIKE 'sqlite_%' AND name <> '_prisma_migrations'`,
      )
      .pluck()
      .all() as string[];
    const tables = tablesOf(lastSchema('sqlite') ?? '');
    expect(tables.map(({ name }) => name).sort()).toEqual(names.sort());
    const before = new Set<string>();
    for (const { name, columns, key, json, named } of tables) {
      const there = database.pragma(`table_info("${name}")`) as {
        name: string;
        type: string;
        pk: number;
        notnull: number;
      }[];
      expect([...columns].sort(), name).toEqual(there.map((column) => column.name).sort());
      expect(key, name).toEqual(
        there
          .filter(({ pk }) => pk > 0)
          .sort((a, b) => a.pk - b.pk)
          .map((column) => column.name),
      );
      const documents = there.filter(({ type }) => type === 'JSONB');
      expect(json, name).toEqual(
        new Map(documents.map((column) => [column.name, { optional: column.notnull === 0 }])),
      );
      expect(named, name).toBe(there.find((column) => column.name === key[0])?.type === 'TEXT');
      const parents = database.pragma(`foreign_key_list("${name}")`) as { table: string }[];
      for (const { table } of parents) expect(before, `${name} refers to ${table}`).toContain(table);
      before.add(name);
    }
    database.close();
  });
});

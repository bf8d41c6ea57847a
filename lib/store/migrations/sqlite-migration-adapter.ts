import { mkdirSync } from 'node:fs';
import { dirname } from 'node:path';
import { PrismaBetterSqlite3 } from '@prisma/adapter-better-sqlite3';
import type { SqlDriverAdapter } from '@prisma/driver-adapter-utils';
import { HISTORY, onRecord, type MigrationKept } from './history';
import { migrationOf } from './migration-list';

/**
 * The SQLite adapter for migrations: each runs whole or not at all, and is on record as finished in the same
 * transaction. The engine puts that on record afterwards: killed in between, it would apply the migration again.
 * References are off while it runs, since redefining a table would otherwise delete what refers to it, and checked
 * before it is kept.
 */
export class SqliteMigrationAdapter extends PrismaBetterSqlite3 {
  readonly #path: string;
  readonly #connections: SqlDriverAdapter[] = [];

  constructor(path: string) {
    super({ url: `file:${path}`, timeout: 30_000 });
    this.#path = path;
  }

  override async connect(): Promise<SqlDriverAdapter> {
    mkdirSync(dirname(this.#path), { recursive: true });
    const adapter = await super.connect();
    this.#connections.push(adapter);
    await adapter.executeScript('PRAGMA journal_mode = WAL; PRAGMA synchronous = FULL;');
    const run = adapter.executeScript.bind(adapter);
    adapter.executeScript = async (script) => {
      await run('PRAGMA foreign_keys = OFF; BEGIN IMMEDIATE;');
      try {
        await run(script);
        const broken = await adapter.queryRaw({ sql: 'PRAGMA foreign_key_check', args: [], argTypes: [] });
        if (broken.rows.length > 0) {
          throw new Error(`The migration would leave ${broken.rows.length} rows that refer to nothing.`);
        }
        const name = migrationOf('sqlite', script);
        if (name !== undefined) await run(onRecord(name));
        await run('COMMIT;');
      } catch (error) {
        await run('ROLLBACK;').catch(() => undefined);
        throw error;
      } finally {
        await run('PRAGMA foreign_keys = ON;');
      }
    };
    return adapter;
  }

  /** A file is there as soon as it is asked for. */
  ready(): Promise<void> {
    return Promise.resolve();
  }

  async history(): Promise<MigrationKept[]> {
    const connection = await this.connect();
    const ask = async (sql: string) => (await connection.queryRaw({ sql, args: [], argTypes: [] })).rows;
    const there = await ask(
      `SELECT name FROM sqlite_master WHERE type = 'table' AND name = '_prisma_migrations'`,
    );
    const rows = there.length === 0 ? [] : await ask(HISTORY);
    // The engine wants the file for itself.
    this.#connections.splice(this.#connections.indexOf(connection), 1);
    await connection.dispose();
    return rows.map(([name, finished, undone]) => ({
      name: String(name),
      finished: Boolean(finished),
      undone: Boolean(undone),
    }));
  }

  /** Closes every connection: the engine locks the database for itself and never lets go. */
  async close(): Promise<void> {
    for (const connection of this.#connections.splice(0)) await connection.dispose();
  }
}

import { AsyncLocalStorage } from 'node:async_hooks';
import { mkdirSync } from 'node:fs';
import { dirname } from 'node:path';
import { PrismaBetterSqlite3 } from '@prisma/adapter-better-sqlite3';
import Database from 'better-sqlite3';
import type { SqlDriverAdapter, SqlQuery, Transaction } from '@prisma/driver-adapter-utils';
import { KeptAnswers } from './kept-answers';
import { OneAtATime } from './one-at-a-time';
import { onlyReads } from './only-reads';
import { patiently } from './patiently';
import { PreparedStatements, type Prepared } from './prepared';

/** Busy is met by trying again without blocking the process, so the driver itself waits only briefly. */
const DRIVER_WAIT_MS = 20;
const PRAGMAS =
  'PRAGMA journal_mode = WAL; PRAGMA synchronous = FULL; PRAGMA foreign_keys = ON; PRAGMA cache_size = -32000;';
/**
 * References are then looked up all together before the end: a row at a time costs three times as much. Rows are put one
 * after another, so that few pages are needed again.
 */
const TO_LOAD = 'PRAGMA foreign_keys = OFF; PRAGMA cache_size = -8000;';
const AS_EVER = 'PRAGMA foreign_keys = ON; PRAGMA cache_size = -32000;';

const NOT_OPEN = 'The database is not open yet.';

/** Whether a transaction that is begun now is to load. */
const toLoad = new AsyncLocalStorage<boolean>();

const command = (sql: string): SqlQuery => ({ sql, args: [], argTypes: [] });

/**
 * The SQLite adapter with reads and writes on a connection each. With one connection for both, a query
 * issued while a transaction is open would run inside it and be lost on its rollback. Transactions begin
 * IMMEDIATE: two processes that read and then write would otherwise fail each other.
 */
export class Sqlite extends PrismaBetterSqlite3 {
  readonly #path: string;
  #writer: Database.Database | null = null;
  #prepared: PreparedStatements | null = null;
  #preparedToWrite: PreparedStatements | null = null;
  /** What the connection that reads was answered. */
  readonly kept = new KeptAnswers();

  #loads = false;
  #begin: (() => Promise<Transaction>) | null = null;

  constructor(path: string) {
    super({ url: `file:${path}`, timeout: DRIVER_WAIT_MS }, { timestampFormat: 'unixepoch-ms' });
    this.#path = path;
  }

  /**
   * Does work within a transaction on the connection that writes, all of it or nothing, in its turn with those of Prisma:
   * for statements of our own alone. Prisma takes a millisecond and more to begin and end one.
   */
  async transaction<Result>(work: () => Promise<Result>): Promise<Result> {
    if (this.#begin === null) throw new Error(NOT_OPEN);
    const open = await this.#begin();
    let result: Result;
    try {
      result = await work();
    } catch (error) {
      // Of two failures the first says why.
      await open.rollback().catch(() => undefined);
      throw error;
    }
    await open.commit();
    return result;
  }

  /** Whether the open transaction loads: it is held to what rows refer to by `checkReferences` alone. */
  get loads(): boolean {
    return this.#loads;
  }

  /** Does what begins a transaction that is to load. */
  loading<Result>(begin: () => Promise<Result>): Promise<Result> {
    return toLoad.run(true, begin);
  }

  /**
   * The connection that writes, for rows by the million: only within a transaction that is open on it, or what is
   * written would be of somebody else's.
   */
  get writer(): Database.Database {
    if (this.#writer?.inTransaction !== true) throw new Error('There is no open transaction to write in.');
    return this.#writer;
  }

  /**
   * @param but tables whose rows surely refer to rows that are there.
   * @throws Error where a row of another table, of the open transaction or an earlier one, refers to nothing.
   */
  checkReferences(but: readonly string[]): void {
    for (const table of this.#tables()) {
      if (but.includes(table)) continue;
      const broken: unknown = this.writer.pragma(`foreign_key_check("${table}")`);
      if (!Array.isArray(broken) || broken.length > 0)
        throw new Error(`Rows of ${table} would refer to rows that are not there; nothing was stored.`);
    }
  }

  /**
   * Does work of the open transaction while CHECKs are not asked row by row: that is a third of what a row takes.
   * @param but tables whose rows were held to them before.
   * @throws Error where a row of another table breaks one.
   */
  async withoutChecks(but: readonly string[], work: () => Promise<void>): Promise<void> {
    const { writer } = this;
    writer.pragma('ignore_check_constraints = ON');
    try {
      await work();
    } finally {
      writer.pragma('ignore_check_constraints = OFF');
    }
    for (const table of this.#tables('%CHECK (%')) {
      if (but.includes(table)) continue;
      const found: unknown = writer.pragma(`quick_check("${table}")`, { simple: true });
      if (found !== 'ok')
        throw new Error(`Rows of ${table} break a rule of it; nothing was stored. ${String(found)}`);
    }
  }

  #tables(like = '%'): string[] {
    return this.writer
      .prepare<[string], string>(`SELECT "name" FROM sqlite_master WHERE "type" = 'table' AND "sql" LIKE ?`)
      .pluck()
      .all(like);
  }

  /** A statement on the connection that writes, within a transaction that is open on it. */
  preparedToWrite(sql: string): Prepared {
    return (this.#preparedToWrite ??= new PreparedStatements(this.writer)).of(sql);
  }

  get connected(): boolean {
    return this.#prepared !== null;
  }

  /** A statement on the connection that reads. */
  prepared(sql: string): Prepared {
    if (this.#prepared === null) throw new Error(NOT_OPEN);
    return this.#prepared.of(sql);
  }

  /** Another than before where anything was committed since, by the connection that writes or by another process. */
  get version(): number {
    const { statement } = this.prepared('PRAGMA data_version');
    return Number(statement.get()?.data_version);
  }

  override async connect(): Promise<SqlDriverAdapter> {
    mkdirSync(dirname(this.#path), { recursive: true });
    const writer = await super.connect();
    this.#writer = beneath(writer);
    this.#preparedToWrite = null;
    await patiently(() => writer.executeScript(PRAGMAS));
    const reader = await super.connect();
    await reader.executeScript(`${PRAGMAS} PRAGMA query_only = ON;`);
    this.#prepared = new PreparedStatements(beneath(reader));
    const writes = new OneAtATime();

    const alone = async <Result>(write: () => Promise<Result>): Promise<Result> => {
      const release = await writes.turn();
      try {
        return await patiently(write);
      } finally {
        release();
      }
    };

    const startTransaction = async (): Promise<Transaction> => {
      const turned = await writes.turn();
      const loads = toLoad.getStore() === true;
      const release = async () => {
        try {
          if (loads) await writer.executeScript(AS_EVER);
        } finally {
          this.#loads = false;
          turned();
        }
      };
      try {
        // What a connection looks up can be changed between its transactions alone.
        if (loads) await writer.executeScript(TO_LOAD);
        await patiently(() => writer.executeRaw(command('BEGIN IMMEDIATE')));
      } catch (error) {
        await release();
        throw error;
      }
      this.#loads = loads;
      return transactionOn(writer, release);
    };
    this.#begin = startTransaction;

    return {
      provider: 'sqlite',
      adapterName: writer.adapterName,
      queryRaw: (query) => (onlyReads(query) ? reader.queryRaw(query) : alone(() => writer.queryRaw(query))),
      executeRaw: (query) => alone(() => writer.executeRaw(query)),
      executeScript: (script) => alone(() => writer.executeScript(script)),
      startTransaction,
      dispose: async () => {
        this.#begin = null;
        this.#prepared = null;
        this.#preparedToWrite = null;
        await reader.dispose();
        await writer.dispose();
      },
    };
  }
}

/** The driver's own database, which the adapter keeps to itself. */
function beneath(adapter: SqlDriverAdapter): Database.Database {
  const client: unknown = Reflect.get(adapter, 'client');
  if (client instanceof Database) return client;
  throw new Error('The adapter of SQLite keeps its database elsewhere by now: see connection/sqlite.ts.');
}

/** The open transaction: it ends itself, so that a failed COMMIT still frees the connection. */
function transactionOn(writer: SqlDriverAdapter, release: () => Promise<void>): Transaction {
  const run = async (sql: string) => {
    await writer.executeRaw(command(sql));
  };
  return {
    provider: 'sqlite',
    adapterName: writer.adapterName,
    options: { usePhantomQuery: true },
    queryRaw: (query) => writer.queryRaw(query),
    executeRaw: (query) => writer.executeRaw(query),
    commit: async () => {
      try {
        await run('COMMIT');
      } catch (error) {
        await run('ROLLBACK').catch(() => undefined);
        throw error;
      } finally {
        await release();
      }
    },
    rollback: async () => {
      try {
        await run('ROLLBACK');
      } finally {
        await release();
      }
    },
    createSavepoint: (name) => run(`SAVEPOINT ${name}`),
    rollbackToSavepoint: (name) => run(`ROLLBACK TO ${name}`),
    releaseSavepoint: (name) => run(`RELEASE SAVEPOINT ${name}`),
  };
}

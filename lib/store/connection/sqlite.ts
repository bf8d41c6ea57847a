import { AsyncLocalStorage } from 'node:async_hooks';
import { mkdirSync } from 'node:fs';
import { dirname } from 'node:path';
import { PrismaBetterSqlite3 } from '@prisma/adapter-better-sqlite3';
import Database from 'better-sqlite3';
import type { SqlDriverAdapter, SqlQuery, Transaction } from '@prisma/driver-adapter-utils';
import { KeptAnswers } from './kept-answers';
import { OneAtATime } from './one-at-a-time';
import { onlyReads } from './only-reads';
import { isBusy, patiently } from './patiently';
import { PreparedStatements, type Prepared } from './prepared';
import { ReadingConnection } from './reading-connection';

/** Busy is met by trying again without blocking the process, so the driver itself waits only briefly. */
const DRIVER_WAIT_MS = 20;
const PRAGMAS =
  'PRAGMA journal_mode = WAL; PRAGMA synchronous = FULL; PRAGMA foreign_keys = ON; PRAGMA cache_size = -32000;';
/**
 * References are then looked up all together before the end: a row at a time costs three times as much. Rows are put one
 * after another, so that few pages are needed again.
 */
const TO_LOAD = 'PRAGMA foreign_keys = OFF; PRAGMA cache_size = -8000;';
/**
 * What is added is then written once, into the file itself, and not to a log before; beside it stands what a file was like
 * that a kill leaves half written, for whoever opens it next. EXTRA keeps a commit as surely as FULL does with a log.
 */
const WITHOUT_LOG = 'PRAGMA journal_mode = DELETE; PRAGMA synchronous = EXTRA;';

const NOT_OPEN = 'The database is not open yet.';

/** How a transaction is to load. */
export interface Load {
  /** Whether others may be kept from the database until it ends, if nobody else has it open when it begins. */
  shutOut: boolean;
}

/** How a transaction that is begun now is to load. */
const toLoad = new AsyncLocalStorage<Load>();

const command = (sql: string): SqlQuery => ({ sql, args: [], argTypes: [] });

/**
 * The SQLite adapter with reads and writes on a connection each. With one connection for both, a query
 * issued while a transaction is open would run inside it and be lost on its rollback. Transactions begin
 * IMMEDIATE: two processes that read and then write would otherwise fail each other.
 */
export class Sqlite extends PrismaBetterSqlite3 {
  readonly #path: string;
  #open: Promise<SqlDriverAdapter> | null = null;
  #writer: Database.Database | null = null;
  #reading: ReadingConnection | null = null;
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
  loading<Result>(load: Load, begin: () => Promise<Result>): Promise<Result> {
    return toLoad.run(load, begin);
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
    return this.#begin !== null;
  }

  /** A statement on the connection that reads. */
  prepared(sql: string): Prepared {
    if (this.#reading === null) throw new Error(NOT_OPEN);
    return this.#reading.prepared(sql);
  }

  /** Another than before where anything was committed since, by the connection that writes or by another process. */
  get version(): string {
    if (this.#reading === null) throw new Error(NOT_OPEN);
    return this.#reading.version;
  }

  /** Opens the file, if it is not open: for Prisma, and for questions of our own, which need not wait for Prisma to begin. */
  override connect(): Promise<SqlDriverAdapter> {
    this.#open ??= this.#openFile().catch((error: unknown) => {
      this.#open = null;
      throw error;
    });
    return this.#open;
  }

  /** Does no harm where Prisma ended it. */
  async end(): Promise<void> {
    await (await this.#open)?.dispose();
  }

  async #openFile(): Promise<SqlDriverAdapter> {
    mkdirSync(dirname(this.#path), { recursive: true });
    const writer = await super.connect();
    this.#writer = beneath(writer);
    this.#preparedToWrite = null;
    await patiently(() => writer.executeScript(PRAGMAS));
    const reading = new ReadingConnection(async () => {
      const adapter = await super.connect();
      await patiently(() => adapter.executeScript(`${PRAGMAS} PRAGMA query_only = ON;`));
      return { adapter, database: beneath(adapter) };
    });
    await reading.open();
    this.#reading = reading;
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
      const load = toLoad.getStore();
      let alone = false;
      const release = async () => {
        try {
          if (load !== undefined) await patiently(() => writer.executeScript(PRAGMAS));
          if (alone) await reading.open();
        } finally {
          this.#loads = false;
          turned();
        }
      };
      try {
        // What a connection looks up can be changed between its transactions alone.
        if (load !== undefined) await writer.executeScript(TO_LOAD);
        alone = load?.shutOut === true && (await withoutLog(writer, reading));
        await patiently(() => writer.executeRaw(command(alone ? 'BEGIN EXCLUSIVE' : 'BEGIN IMMEDIATE')));
      } catch (error) {
        await release();
        throw error;
      }
      this.#loads = load !== undefined;
      return transactionOn(writer, release);
    };
    this.#begin = startTransaction;

    return {
      provider: 'sqlite',
      adapterName: writer.adapterName,
      queryRaw: (query) =>
        onlyReads(query) ? reading.adapter.queryRaw(query) : alone(() => writer.queryRaw(query)),
      executeRaw: (query) => alone(() => writer.executeRaw(query)),
      executeScript: (script) => alone(() => writer.executeScript(script)),
      startTransaction,
      dispose: async () => {
        this.#open = null;
        this.#begin = null;
        this.#reading = null;
        this.#preparedToWrite = null;
        await reading.close();
        await writer.dispose();
      },
    };
  }
}

/**
 * Has what is written go into the file itself from now on, until anybody opens the file. SQLite refuses it while anybody
 * else has it open, so the connection that reads is closed.
 * @returns false, with everything as before, where it is refused.
 */
async function withoutLog(writer: SqlDriverAdapter, reading: ReadingConnection): Promise<boolean> {
  await reading.close();
  try {
    await writer.executeScript(WITHOUT_LOG);
    return true;
  } catch (error) {
    await reading.open();
    if (isBusy(error)) return false;
    throw error;
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

import { AsyncLocalStorage } from 'node:async_hooks';
import { createHash, randomBytes } from 'node:crypto';
import { PrismaPg } from '@prisma/adapter-pg';
import type { Transaction } from '@prisma/driver-adapter-utils';
import pg from 'pg';
import { CopyIn, type Copy } from './copy-in';
import { KeptAnswers } from './kept-answers';
import { OneAtATime } from './one-at-a-time';
import { onlyReads } from './only-reads';
import { bound, READING } from './postgresql-values';

/** Connections that one process holds at most; the server shares its own among all processes. */
const CONNECTIONS = 8;

/** All connections of this process, and of no other, go by this name: see `sql/without-keys.ts`. */
const NAME = `rehang ${process.pid} ${randomBytes(4).toString('hex')}`;

/** So many questions have a name by which the server knows them; one in ever new forms must not fill its memory. */
const MOST_NAMED = 500;

/** Runs one statement of an open transaction. */
export type Run = (
  sql: string,
  values: readonly unknown[],
) => Promise<{ rows: unknown[]; rowCount: number | null }>;

/** How rows are copied into the transaction that is begun in this context, once it is. */
const copying = new AsyncLocalStorage<{ copy: Copy | null }>();

/**
 * A PostgreSQL server: Prisma's adapter on a pool of connections, by which questions of our own go to it directly. The
 * server takes such a question apart and plans it once for each connection, where Prisma has it do so each time and
 * takes several times as long itself to hand question and rows on. What is acknowledged is on the server's disk, by its
 * own default.
 */
export class Postgresql extends PrismaPg {
  readonly #pool: pg.Pool;
  readonly #names = new Map<string, string>();
  #state: Promise<string> | null = null;
  #writes = 0;
  /** What the server was answering with. */
  readonly kept = new KeptAnswers();

  constructor(url: string) {
    const pool = new pg.Pool({ connectionString: url, max: CONNECTIONS, application_name: NAME });
    super(pool, { disposeExternalPool: true });
    this.#pool = pool;
    // A connection that is lost while nobody asks is no failure: the next question has another.
    pool.on('error', () => undefined);
  }

  /** Another than before where this process wrote anything since. */
  get writes(): number {
    return this.#writes;
  }

  /** The rows that a question is answered with, outside of any transaction. */
  async ask<Row>(sql: string, values: readonly unknown[]): Promise<Row[]> {
    return (await this.#pool.query<Row & pg.QueryResultRow>(this.#question(sql, values))).rows;
  }

  /**
   * Does work within a transaction on a connection of its own, all of it or nothing: for statements of our own alone,
   * each of which the server has planned before.
   */
  async transaction<Result>(work: (run: Run) => Promise<Result>): Promise<Result> {
    const connection = await this.#pool.connect();
    let broken = false;
    try {
      await connection.query('BEGIN');
      const result = await work((sql, values) => connection.query(this.#question(sql, values)));
      await connection.query('COMMIT');
      return result;
    } catch (error) {
      // Of two failures the first says why. A connection that cannot even be told to roll back is let go.
      await connection.query('ROLLBACK').catch(() => (broken = true));
      throw error;
    } finally {
      this.#writes++;
      connection.release(broken);
    }
  }

  #question(sql: string, values: readonly unknown[]) {
    return { name: this.#nameOf(sql), text: sql, values: values.map(bound), types: READING };
  }

  /**
   * A word for all that is committed: it names the transactions that a question now does not see, so it changes with
   * every one that begins to write or ends. Whoever wants it in the same moment is told by one question, which is sent
   * after all of them asked for it.
   */
  state(): Promise<string> {
    this.#state ??= new Promise<string>((tell, fail) => {
      setImmediate(() => {
        this.#state = null;
        this.#askState().then(tell, fail);
      });
    });
    return this.#state;
  }

  async #askState(): Promise<string> {
    const [row] = await this.ask<{ state: string }>('SELECT pg_current_snapshot()::text AS "state"', []);
    if (row === undefined) throw new Error('The database server did not say what it holds.');
    return row.state;
  }

  /**
   * Does what begins a transaction.
   * @param begin is handed what copies rows into it, once it is open.
   */
  copying<Result>(begin: (copy: Copy) => Promise<Result>): Promise<Result> {
    const begun: { copy: Copy | null } = { copy: null };
    const copy: Copy = (sql, rows) => {
      if (begun.copy === null) throw new Error('There is no open transaction to copy rows into.');
      return begun.copy(sql, rows);
    };
    return copying.run(begun, () => begin(copy));
  }

  /** Does no harm where Prisma ended it. */
  async end(): Promise<void> {
    if (!this.#pool.ending) await this.#pool.end();
  }

  #nameOf(sql: string): string | undefined {
    const known = this.#names.get(sql);
    if (known !== undefined || this.#names.size >= MOST_NAMED) return known;
    const name = createHash('sha256').update(sql).digest('hex').slice(0, 32);
    this.#names.set(sql, name);
    return name;
  }

  override async connect(): ReturnType<PrismaPg['connect']> {
    const adapter = await super.connect();
    const [query, execute, run, begin] = [
      adapter.queryRaw.bind(adapter),
      adapter.executeRaw.bind(adapter),
      adapter.executeScript.bind(adapter),
      adapter.startTransaction.bind(adapter),
    ];
    const written = async <Result>(work: Promise<Result>): Promise<Result> => {
      try {
        return await work;
      } finally {
        this.#writes++;
      }
    };
    return Object.assign(adapter, {
      queryRaw: (...of: Parameters<typeof query>) =>
        onlyReads(of[0]) ? query(...of) : written(query(...of)),
      executeRaw: (...of: Parameters<typeof execute>) => written(execute(...of)),
      executeScript: (...of: Parameters<typeof run>) => written(run(...of)),
      startTransaction: async (...of: Parameters<typeof begin>) => {
        const begun = oneAtATime(await begin(...of));
        const commit = begun.commit.bind(begun);
        return Object.assign(begun, { commit: () => written(commit()) });
      },
    });
  }
}

/** The same transaction, in which what is asked, changed or copied waits for what goes on before it. */
function oneAtATime(begun: Transaction): Transaction {
  const turns = new OneAtATime();
  const inTurn = async <Result>(work: () => Promise<Result>): Promise<Result> => {
    const release = await turns.turn();
    try {
      return await work();
    } finally {
      release();
    }
  };
  const [query, execute] = [begun.queryRaw.bind(begun), begun.executeRaw.bind(begun)];
  const client = beneath(begun);
  const copies = copying.getStore();
  if (copies !== undefined)
    copies.copy = (sql, rows) => inTurn(() => client.query(new CopyIn(sql, rows)).done);
  return Object.assign(begun, {
    queryRaw: (...of: Parameters<typeof query>) => inTurn(() => query(...of)),
    executeRaw: (...of: Parameters<typeof execute>) => inTurn(() => execute(...of)),
  });
}

/** The driver's own connection, which the transaction keeps to itself. */
function beneath(begun: Transaction): pg.Client {
  const client: unknown = Reflect.get(begun, 'client');
  if (client instanceof pg.Client) return client;
  throw new Error(
    'The adapter of PostgreSQL keeps its connection elsewhere by now: see connection/postgresql.ts.',
  );
}

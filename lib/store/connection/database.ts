import { dialect } from '@/lib/store/dialect';
import { PrismaClient as PostgresqlClient } from '@/lib/store/generated/postgresql/client';
import { PrismaClient, type Prisma } from '@/lib/store/generated/sqlite/client';
import type { ShopId } from '@/lib/store/types';
import type { Rows } from '@/lib/store/sql/rows';
import { RowsByStatement } from '@/lib/store/sql/rows-by-statement';
import { RowsInProcess } from '@/lib/store/sql/rows-in-process';
import { StatementsInProcess, type Statements } from '@/lib/store/sql/statements';
import { databaseUrl, type DatabaseUrl } from './database-url';
import { postgresqlAdapter } from './postgresql';
import { Sqlite } from './sqlite';

export type Database = PrismaClient;
/** What queries run on: the database itself, or a transaction on it. */
export type Queries = Prisma.TransactionClient;

interface Open {
  address: string;
  client: Database;
  /** Null where the database is a server. */
  sqlite: Sqlite | null;
}

// One client a process, also where the server loads this module more than once.
const held = globalThis as typeof globalThis & { rehangDatabase?: Open | undefined };

/** The database that `DATABASE_URL` names, opened at its first use. */
export function database(): Database {
  return opened().client;
}

/** The database where it lives in this process, open; null where it is a server. */
export async function inProcess(): Promise<Sqlite | null> {
  const { client, sqlite } = opened();
  if (sqlite !== null && !sqlite.connected) await client.$connect();
  return sqlite;
}

function opened(): Open {
  const url = databaseUrl();
  const address = url.engine === 'sqlite' ? url.path : url.url;
  const open = held.rehangDatabase;
  if (open !== undefined && open.address === address) return open;
  const sqlite = url.engine === 'sqlite' ? new Sqlite(url.path) : null;
  const client = sqlite === null ? openDatabase(url) : new PrismaClient({ adapter: sqlite });
  held.rehangDatabase = { address, client, sqlite };
  return held.rehangDatabase;
}

/** A client of its own, to be disconnected by whoever opened it. */
export function openDatabase(url: DatabaseUrl): Database {
  if (url.engine === 'sqlite') return new PrismaClient({ adapter: new Sqlite(url.path) });
  // Both clients are generated from the same models: what one can be asked, the other can.
  return new PostgresqlClient({ adapter: postgresqlAdapter(url.url) }) as unknown as Database;
}

/** Closes the database; the next use opens it again. */
export async function closeStore(): Promise<void> {
  const open = held.rehangDatabase;
  held.rehangDatabase = undefined;
  await open?.client.$disconnect();
}

const TRANSACTION_MS = 10 * 60_000;
/** How long a transaction may wait for its turn, and take, ms. */
export const PATIENCE = { maxWait: TRANSACTION_MS, timeout: TRANSACTION_MS } as const;

type Work<Result> = (queries: Queries, rows: Rows, within: Statements) => Promise<Result>;

/** Runs all of `work` or nothing of it. Nobody else changes the shop meanwhile. */
export function transaction<Result>(shop: ShopId, work: Work<Result>): Promise<Result> {
  const { client, sqlite } = opened();
  return within(client, sqlite, shop, work);
}

/** What came of a load, and the tables in which it wrote nothing but rows that refer to what it wrote before. */
interface Loaded<Result> {
  result: Result;
  sound: readonly string[];
}

/**
 * The same for work that adds many times the rows that are stored. Where the database lives in this process, what rows
 * refer to is then looked up once for all of them before any is kept, and of tables that the work vouches for not at
 * all.
 */
export async function loading<Result>(shop: ShopId, work: Work<Loaded<Result>>): Promise<Result> {
  const { client, sqlite } = opened();
  if (sqlite === null) return (await transaction(shop, work)).result;
  return sqlite.loading(() =>
    within(client, sqlite, shop, async (...on) => {
      const { result, sound } = await work(...on);
      sqlite.checkReferences(sound);
      return result;
    }),
  );
}

const within = <Result>(client: Database, sqlite: Sqlite | null, shop: ShopId, work: Work<Result>) =>
  client.$transaction(async (queries) => {
    await dialect().alone(queries, shop);
    if (sqlite !== null) return work(queries, new RowsInProcess(sqlite), new StatementsInProcess(sqlite));
    const rows = new RowsByStatement(queries);
    try {
      return await work(queries, rows, queries);
    } finally {
      // Of what was sent and failed the reason is told here: what is asked after it only hears that it failed.
      await rows.settled();
    }
  }, PATIENCE);

/** `transaction` by statements of our own alone. */
export const statements = <Result>(
  shop: ShopId,
  work: (within: Statements) => Promise<Result>,
): Promise<Result> => transaction(shop, (_, __, within) => work(within));

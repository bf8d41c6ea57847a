import { dialect } from '@/lib/store/dialect';
import { PrismaClient as PostgresqlClient } from '@/lib/store/generated/postgresql/client';
import { PrismaClient, type Prisma } from '@/lib/store/generated/sqlite/client';
import type { ShopId } from '@/lib/store/types';
import type { Rows } from '@/lib/store/sql/rows';
import { RowsByCopy } from '@/lib/store/sql/rows-by-copy';
import { RowsInProcess } from '@/lib/store/sql/rows-in-process';
import { StatementsInProcess, StatementsOnServer, type Statements } from '@/lib/store/sql/statements';
import { databaseUrl, type DatabaseUrl } from './database-url';
import { Postgresql } from './postgresql';
import { Sqlite, type Load } from './sqlite';

export type Database = PrismaClient;
/** What queries run on: the database itself, or a transaction on it. */
export type Queries = Prisma.TransactionClient;

/** What questions of our own go to. */
export type Engine = { sqlite: Sqlite; server: null } | { sqlite: null; server: Postgresql };

type Open = Engine & { address: string; client: Database };

// One client a process, also where the server loads this module more than once.
const held = globalThis as typeof globalThis & { rehangDatabase?: Open | undefined };

/** The database that `DATABASE_URL` names, opened at its first use. */
export function database(): Database {
  return opened().client;
}

/** The database beneath, open: SQLite in this process, or a server. */
export async function engine(): Promise<Engine> {
  const open = opened();
  if (open.sqlite?.connected === false) await open.sqlite.connect();
  return open;
}

function opened(): Open {
  const url = databaseUrl();
  const address = url.engine === 'sqlite' ? url.path : url.url;
  const open = held.rehangDatabase;
  if (open !== undefined && open.address === address) return open;
  const own = engineOf(url);
  held.rehangDatabase = { ...own, address, client: clientOf(own) };
  return held.rehangDatabase;
}

function clientOf({ sqlite, server }: Engine): Database {
  if (server === null) return new PrismaClient({ adapter: sqlite });
  // Both clients are generated from the same models: what one can be asked, the other can.
  return new PostgresqlClient({ adapter: server }) as unknown as Database;
}

/** A client of its own, to be disconnected by whoever opened it. */
export function openDatabase(url: DatabaseUrl): Database {
  return clientOf(engineOf(url));
}

const engineOf = (url: DatabaseUrl): Engine =>
  url.engine === 'sqlite'
    ? { sqlite: new Sqlite(url.path), server: null }
    : { sqlite: null, server: new Postgresql(url.url) };

/** Closes the database; the next use opens it again. */
export async function closeStore(): Promise<void> {
  const open = held.rehangDatabase;
  held.rehangDatabase = undefined;
  await open?.client.$disconnect();
  // Prisma ends what it began, and may never have been asked.
  await (open?.sqlite ?? open?.server)?.end();
}

const TRANSACTION_MS = 10 * 60_000;
/** How long a transaction may wait for its turn, and take, ms. */
export const PATIENCE = { maxWait: TRANSACTION_MS, timeout: TRANSACTION_MS } as const;

type Work<Result> = (queries: Queries, rows: Rows, within: Statements) => Promise<Result>;

/** Runs all of `work` or nothing of it. Nobody else changes the shop meanwhile. */
export function transaction<Result>(shop: ShopId, work: Work<Result>): Promise<Result> {
  return within(opened(), shop, work);
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
export async function loading<Result>(shop: ShopId, how: Load, work: Work<Loaded<Result>>): Promise<Result> {
  const open = opened();
  const { sqlite } = open;
  if (sqlite === null) return (await within(open, shop, work)).result;
  return sqlite.loading(how, () =>
    within(open, shop, async (...on) => {
      const { result, sound } = await work(...on);
      sqlite.checkReferences(sound);
      return result;
    }),
  );
}

function within<Result>({ client, sqlite, server }: Open, shop: ShopId, work: Work<Result>): Promise<Result> {
  if (server === null)
    return client.$transaction(
      (queries) => work(queries, new RowsInProcess(sqlite), new StatementsInProcess(sqlite)),
      PATIENCE,
    );
  return server.copying((copy) =>
    client.$transaction(async (queries) => {
      await dialect().alone(queries, shop);
      const rows = new RowsByCopy(queries, copy);
      try {
        return await work(queries, rows, queries);
      } finally {
        // Of what was sent and failed the reason is told here: what is asked after it only hears that it failed.
        await rows.settled();
      }
    }, PATIENCE),
  );
}

/** `transaction` by statements of our own alone, without Prisma. */
export async function statements<Result>(
  shop: ShopId,
  work: (within: Statements) => Promise<Result>,
): Promise<Result> {
  const { sqlite, server } = await engine();
  if (server === null) return sqlite.transaction(() => work(new StatementsInProcess(sqlite)));
  return server.transaction(async (run) => {
    const within = new StatementsOnServer(run);
    await dialect().alone(within, shop);
    return work(within);
  });
}

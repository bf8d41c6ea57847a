import { PrismaClient, type Prisma } from '@/lib/store/generated/sqlite/client';
import { databaseUrl } from './database-url';
import { Sqlite } from './sqlite';

export type Database = PrismaClient;
/** What queries run on: the database itself, or a transaction on it. */
export type Queries = Prisma.TransactionClient;

interface Open {
  path: string;
  client: PrismaClient;
}

// One client a process, also where the server loads this module more than once.
const held = globalThis as typeof globalThis & { rehangDatabase?: Open | undefined };

/** The database that `DATABASE_URL` names, opened at its first use. */
export function database(): Database {
  const url = databaseUrl();
  if (url.engine === 'postgresql') {
    throw new Error(
      'This version keeps its data in SQLite only: set DATABASE_URL to file: and a path, or leave it out.',
    );
  }
  const open = held.rehangDatabase;
  if (open !== undefined && open.path === url.path) return open.client;
  const client = new PrismaClient({ adapter: new Sqlite(url.path) });
  held.rehangDatabase = { path: url.path, client };
  return client;
}

/** Closes the database; the next use opens it again. */
export async function closeStore(): Promise<void> {
  const open = held.rehangDatabase;
  held.rehangDatabase = undefined;
  await open?.client.$disconnect();
}

const TRANSACTION_MS = 10 * 60_000;

/** Runs all of `work` or nothing of it. */
export function transaction<Result>(work: (queries: Queries) => Promise<Result>): Promise<Result> {
  return database().$transaction(work, { maxWait: TRANSACTION_MS, timeout: TRANSACTION_MS });
}

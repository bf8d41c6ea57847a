import { afterAll, beforeEach, inject } from 'vitest';
import { closeStore, getShop } from '@/lib/store';
import { database } from '@/lib/store/connection/database';
import { freshPostgresql } from './fresh/postgresql';
import { freshSqlite } from './fresh/sqlite';

/** A migrated, empty database of its own before every test of a file. */
export interface FreshStore {
  /** `DATABASE_URL` of the database at present. */
  url: string;
  shop: number;
}

/** Makes empty databases, each with all migrations. */
export interface Databases {
  /**
   * @param like A database of these that nobody is connected to: the new one is a copy of it.
   * @returns `DATABASE_URL`
   */
  next: (like?: string) => Promise<string>;
  close: () => Promise<void>;
}

/**
 * Of the engine that this run of the tests is about.
 * @param how `shared`: one database for all tests of the file, for tests that change nothing. `filled`: what every test
 * of the file begins with; it is stored once, and copied.
 */
export function freshStore(
  how: { shared?: boolean; filled?: (shop: number) => Promise<unknown> } = {},
): FreshStore {
  const databases = onPostgresql
    ? freshPostgresql(inject('postgresql'))
    : freshSqlite(inject('sqliteTemplate'));
  const store: FreshStore = { url: '', shop: 0 };
  let filled: string | undefined;
  const open = async (url: string) => {
    store.url = url;
    process.env.DATABASE_URL = url;
    store.shop = (await getShop()).id;
  };
  beforeEach(async (context) => {
    if (databases === null) return context.skip('no PostgreSQL server');
    if (how.shared === true && store.url !== '') return;
    await closeStore();
    if (how.filled !== undefined && filled === undefined) {
      await open(await databases.next());
      await how.filled(store.shop);
      await closeStore();
      filled = store.url;
    }
    await open(await databases.next(filled));
  });
  afterAll(async () => {
    await closeStore();
    await databases?.close();
  });
  return store;
}

export const onPostgresql = process.env.REHANG_TEST_ENGINE === 'postgresql';

/** Sends a statement that no code of ours sends. */
export const statement = (sql: string): Promise<number> => database().$executeRawUnsafe(sql);

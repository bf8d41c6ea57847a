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
  /** @returns `DATABASE_URL` */
  next: () => Promise<string>;
  close: () => Promise<void>;
}

/**
 * Of the engine that this run of the tests is about.
 * @param how `shared`: one database for all tests of the file, for tests that change nothing.
 */
export function freshStore(how: { shared?: boolean } = {}): FreshStore {
  const databases = onPostgresql
    ? freshPostgresql(inject('postgresql'))
    : freshSqlite(inject('sqliteTemplate'));
  const store: FreshStore = { url: '', shop: 0 };
  beforeEach(async (context) => {
    if (databases === null) return context.skip('no PostgreSQL server');
    if (how.shared === true && store.url !== '') return;
    await closeStore();
    store.url = await databases.next();
    process.env.DATABASE_URL = store.url;
    store.shop = (await getShop()).id;
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

import { copyFileSync, mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, beforeEach } from 'vitest';
import { closeStore, getShop } from '@/lib/store';
import { migrate } from '@/lib/store/migrations/migrate';

/** A migrated, empty SQLite database of its own before every test of a file. */
export interface FreshStore {
  /** Of the database at present. */
  path: string;
  shop: number;
}

export function freshStore(): FreshStore {
  const folder = mkdtempSync(join(tmpdir(), 'rehang-store-'));
  const template = join(folder, 'template.db');
  const migrated = migrate(`file:${template}`);
  const store: FreshStore = { path: '', shop: 0 };
  let count = 0;
  beforeEach(async () => {
    await migrated;
    await closeStore();
    store.path = join(folder, `${count++}.db`);
    copyFileSync(template, store.path);
    process.env.DATABASE_URL = `file:${store.path}`;
    store.shop = (await getShop()).id;
  });
  afterAll(async () => {
    await closeStore();
    rmSync(folder, { recursive: true, force: true });
  });
  return store;
}

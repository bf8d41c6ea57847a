import { copyFileSync, existsSync } from 'node:fs';
import { join } from 'node:path';
import Database from 'better-sqlite3';
import { databaseUrl } from '@/lib/store/connection/database-url';
import { migrate } from '@/lib/store/migrations/migrate';
import { migrationNames } from '@/lib/store/migrations/migration-list';
import { beside } from './beside';
import { copyDatabase, type CopySummary } from './copy-database';
import { checkSound } from './snapshot';

/**
 * Puts a backup in place of everything that the database holds, in one transaction: whole or not at all, while
 * the shop works on. A backup of an earlier version is brought up to date first; the file itself is not touched.
 * @param address as `DATABASE_URL`.
 * @throws RangeError in words where the file is no backup, is damaged, or comes from a later version.
 */
export async function restore(file: string, address?: string): Promise<CopySummary> {
  checkBackup(file);
  return beside(file, async (folder) => {
    const copy = join(folder, 'copy.db');
    copyFileSync(file, copy);
    await migrate(`file:${copy}`);
    await migrate(address);
    return copyDatabase({ engine: 'sqlite', path: copy }, databaseUrl(address), { replace: true });
  });
}

/** @throws RangeError in words where `restore` would refuse the file. */
export function checkBackup(file: string): void {
  if (!existsSync(file)) throw new RangeError(`There is no file ${file}.`);
  checkSound(file);
  const names = appliedIn(file);
  if (names.length === 0) throw new RangeError(`${file} is no backup of Rehang.`);
  const known = new Set(migrationNames('sqlite'));
  const later = names.filter((name) => !known.has(name));
  if (later.length === 0) return;
  throw new RangeError(
    `${file} comes from a later version of Rehang (${later.join(', ')}). Restore it with that version.`,
  );
}

/** Names of the migrations that made the tables of a file; none where it is not ours. */
function appliedIn(file: string): string[] {
  const database = new Database(file, { readonly: true });
  try {
    const ours = database.prepare(`SELECT 1 FROM sqlite_master WHERE name = '_prisma_migrations'`).get();
    if (ours === undefined) return [];
    return database
      .prepare('SELECT migration_name FROM "_prisma_migrations" WHERE finished_at IS NOT NULL')
      .pluck()
      .all()
      .map(String);
  } finally {
    database.close();
  }
}

import { existsSync, renameSync } from 'node:fs';
import { join } from 'node:path';
import { databaseUrl } from '@/lib/store/connection/database-url';
import { migrate } from '@/lib/store/migrations/migrate';
import { beside } from './beside';
import { copyDatabase } from './copy-database';
import { snapshot } from './snapshot';

/**
 * Writes everything into one file, of either database, while the shop works on. The file is a SQLite database.
 * @param address as `DATABASE_URL`.
 * @throws RangeError in words where the file exists, or the copy is not sound or not the same.
 */
export async function backup(file: string, address?: string): Promise<void> {
  const url = databaseUrl(address);
  if (url.engine === 'sqlite') {
    snapshot(url.path, file);
    return;
  }
  if (existsSync(file)) throw new RangeError(`${file} exists already. Name a file that does not.`);
  await beside(file, async (folder) => {
    const copy = join(folder, 'copy.db');
    await migrate(`file:${copy}`);
    await copyDatabase(url, { engine: 'sqlite', path: copy });
    // In one file, without a write-ahead log beside it.
    const whole = join(folder, 'whole.db');
    snapshot(copy, whole);
    renameSync(whole, file);
  });
}

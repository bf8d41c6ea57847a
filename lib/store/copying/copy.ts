import { join } from 'node:path';
import { databaseUrl } from '@/lib/store/connection/database-url';
import { migrate } from '@/lib/store/migrations/migrate';
import { beside } from './beside';
import { copyDatabase, type CopySummary } from './copy-database';
import { snapshot } from './snapshot';

/**
 * Copies one database into another, empty one, whose tables it makes; both may be in use.
 * @param from and `to` as `DATABASE_URL`.
 * @throws RangeError in words where the target is not empty, or the copy is not the same.
 */
export async function copy(from: string, to: string, say?: (line: string) => void): Promise<CopySummary> {
  const [source, target] = [databaseUrl(from), databaseUrl(to)];
  const options = say === undefined ? {} : { say };
  if (source.engine === 'postgresql') {
    await migrate(from);
    await migrate(to);
    return copyDatabase(source, target, options);
  }
  return beside(source.path, async (folder) => {
    const moment = join(folder, 'copy.db');
    snapshot(source.path, moment);
    await migrate(`file:${moment}`);
    await migrate(to);
    return copyDatabase({ engine: 'sqlite', path: moment }, target, options);
  });
}

import { copyFileSync, mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { migrate } from '@/lib/store/migrations/migrate';
import type { Databases } from '../fresh-store';

/** Databases in a temporary folder: copies of one that was migrated. */
export function freshSqlite(): Databases {
  const folder = mkdtempSync(join(tmpdir(), 'rehang-store-'));
  const template = join(folder, 'template.db');
  const migrated = migrate(`file:${template}`);
  let count = 0;
  return {
    async next() {
      await migrated;
      const path = join(folder, `${count++}.db`);
      copyFileSync(template, path);
      return `file:${path}`;
    },
    close() {
      rmSync(folder, { recursive: true, force: true });
      return Promise.resolve();
    },
  };
}

import { copyFileSync, existsSync, mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import type { Databases } from '../fresh-store';

/** Of a database that was closed: what was written stands in its one file. */
function pathOf(url: string): string {
  const path = url.slice('file:'.length);
  if (existsSync(`${path}-wal`)) throw new Error(`${path} was not closed: it cannot be copied.`);
  return path;
}

/**
 * Databases in a temporary folder: copies of one that was migrated.
 * @param template path of that one.
 */
export function freshSqlite(template: string): Databases {
  const folder = mkdtempSync(join(tmpdir(), 'rehang-store-'));
  let count = 0;
  return {
    next(like) {
      const path = join(folder, `${count++}.db`);
      copyFileSync(like === undefined ? template : pathOf(like), path);
      return Promise.resolve(`file:${path}`);
    },
    close() {
      rmSync(folder, { recursive: true, force: true });
      return Promise.resolve();
    },
  };
}

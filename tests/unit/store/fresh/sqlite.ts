import { copyFileSync, mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import type { Databases } from '../fresh-store';

/**
 * Databases in a temporary folder: copies of one that was migrated.
 * @param template path of that one.
 */
export function freshSqlite(template: string): Databases {
  const folder = mkdtempSync(join(tmpdir(), 'rehang-store-'));
  let count = 0;
  return {
    next() {
      const path = join(folder, `${count++}.db`);
      copyFileSync(template, path);
      return Promise.resolve(`file:${path}`);
    },
    close() {
      rmSync(folder, { recursive: true, force: true });
      return Promise.resolve();
    },
  };
}

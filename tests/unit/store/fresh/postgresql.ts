import { randomUUID } from 'node:crypto';
import pg from 'pg';
import type { Databases } from '../fresh-store';

/** The migrated database that all others are copies of. */
export const TEMPLATE = 'rehang_template';

/**
 * Databases on the tests' server: copies of one that was migrated.
 * @param address of the server; null where there is none.
 */
export function freshPostgresql(address: string | null): Databases | null {
  if (address === null) return null;
  const run = `run_${randomUUID().replaceAll('-', '')}`;
  const admin = new pg.Client(`${address}/postgres`);
  const connected = admin.connect();
  const made: string[] = [];
  return {
    async next(like) {
      await connected;
      const name = `${run}_${made.length}`;
      const template = like?.slice(`${address}/`.length) ?? TEMPLATE;
      await admin.query(`CREATE DATABASE "${name}" TEMPLATE "${template}"`);
      made.push(name);
      return `${address}/${name}`;
    },
    async close() {
      await connected;
      for (const name of made) await admin.query(`DROP DATABASE IF EXISTS "${name}" WITH (FORCE)`);
      await admin.end();
    },
  };
}

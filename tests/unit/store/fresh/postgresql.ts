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
  const strategy = connected.then(() => copyingFiles(admin));
  const made: string[] = [];
  return {
    async next(like) {
      const name = `${run}_${made.length}`;
      const template = like?.slice(`${address}/`.length) ?? TEMPLATE;
      await admin.query(`CREATE DATABASE "${name}" TEMPLATE "${template}"${await strategy}`);
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

/** Copying files is half of logging what is in them; servers before 15 know no other way. */
async function copyingFiles(admin: pg.Client): Promise<string> {
  const { rows } = await admin.query<{ version: string }>(
    `SELECT current_setting('server_version_num') AS "version"`,
  );
  return Number(rows[0]?.version) >= 150_000 ? ' STRATEGY FILE_COPY' : '';
}

import { randomUUID } from 'node:crypto';
import pg from 'pg';
import { migrate } from '@/lib/store/migrations/migrate';
import type { Databases } from '../fresh-store';

/**
 * Databases on the tests' server: copies of one that was migrated.
 * @param address of the server; null where there is none.
 */
export function freshPostgresql(address: string | null): Databases | null {
  if (address === null) return null;
  const run = `run_${randomUUID().replaceAll('-', '')}`;
  const admin = new pg.Client(`${address}/postgres`);
  const template = `${run}_template`;
  const migrated = makeTemplate(admin, address, template);
  const made: string[] = [template];
  return {
    async next() {
      await migrated;
      const name = `${run}_${made.length}`;
      await admin.query(`CREATE DATABASE "${name}" TEMPLATE "${template}"`);
      made.push(name);
      return `${address}/${name}`;
    },
    async close() {
      await migrated;
      for (const name of made) await admin.query(`DROP DATABASE IF EXISTS "${name}" WITH (FORCE)`);
      await admin.end();
    },
  };
}

async function makeTemplate(admin: pg.Client, address: string, template: string): Promise<void> {
  await admin.connect();
  await admin.query(`CREATE DATABASE "${template}"`);
  await migrate(`${address}/${template}`);
}

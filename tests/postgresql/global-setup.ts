import type { TestProject } from 'vitest/node';
import pg from 'pg';
import { migrated } from '@/tests/migrated';
import { sharedSetUp } from '@/tests/shared-set-up';
import { TEMPLATE } from '@/tests/unit/store/fresh/postgresql';
import { postgresqlPrograms } from './programs';
import { startServer } from './server';

declare module 'vitest' {
  interface ProvidedContext {
    /** Address of the tests' PostgreSQL server without a database's name; null where there is none. */
    postgresql: string | null;
  }
}

/** An empty database with all migrations, which every test copies. */
async function makeTemplate(address: string): Promise<void> {
  const admin = new pg.Client(`${address}/postgres`);
  await admin.connect();
  await admin.query(`CREATE DATABASE "${TEMPLATE}"`);
  await admin.end();
  await migrated(`${address}/${TEMPLATE}`);
}

/** One PostgreSQL server for all tests that run on it. */
export default async function setup(project: TestProject) {
  const programs = postgresqlPrograms();
  if (programs === null) {
    const message =
      'NO POSTGRESQL SERVER: its programs are neither on the path, nor in /usr/lib/postgresql, nor installed with npm.';
    if (process.env.CI !== undefined) throw new Error(message);
    console.error(`\n${message}\nALL TESTS ON POSTGRESQL ARE SKIPPED.\n`);
    project.provide('postgresql', null);
    return undefined;
  }
  const { value, letGo } = await sharedSetUp('PostgreSQL server', async () => {
    const { address, stop } = await startServer(programs);
    await makeTemplate(address);
    return { value: address, end: stop };
  });
  project.provide('postgresql', value);
  return letGo;
}

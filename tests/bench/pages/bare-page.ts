import { mkdirSync, rmSync, writeFileSync } from 'node:fs';
import { dirname, join } from 'node:path';
import { finished, type Served, serving } from './serving';

/** Beside the builds: below the root, so that the page finds its packages, and no source of ours. */
const FOLDER = join(process.cwd(), '.next-bare-page');

/** Where each kind of database is asked. */
export const BARE_PATH = { SQLite: '/', PostgreSQL: '/postgresql' } as const;

const FILES = {
  'package.json': '{ "name": "bare-page", "private": true, "type": "module" }\n',
  'next.config.mjs': `export default {
  serverExternalPackages: ['better-sqlite3', 'pg'],
  turbopack: { root: ${JSON.stringify(process.cwd())} },
};
`,
  // Else it would find ours, one folder up, and begin what our program does beside its pages.
  'instrumentation.js': 'export function register() {}\n',
  'app/layout.js': `export default function Layout({ children }) {
  return <html lang="en"><body>{children}</body></html>;
}
`,
  'app/page.js': `import Database from 'better-sqlite3';
import { connection } from 'next/server';

const database = new Database(':memory:');
const query = database.prepare('SELECT 1 AS one');

export default async function Bare() {
  await connection();
  return <p>{query.get().one}</p>;
}
`,
  'app/postgresql/page.js': `import pg from 'pg';
import { connection } from 'next/server';

const pool = new pg.Pool({ connectionString: process.env.DATABASE_URL, max: 8 });

export default async function Bare() {
  await connection();
  const { rows } = await pool.query('SELECT 1 AS one');
  return <p>{rows[0].one}</p>;
}
`,
};

/**
 * The floor: a page of the same framework that asks the database one trivial question, built and served alike; one for
 * each kind of database.
 * @param postgresql the address of a server; '' where there is none, and its page is not asked for
 */
export async function serveBarePage(port: number, postgresql: string): Promise<Served> {
  rmSync(FOLDER, { recursive: true, force: true });
  for (const [name, text] of Object.entries(FILES)) {
    mkdirSync(dirname(join(FOLDER, name)), { recursive: true });
    writeFileSync(join(FOLDER, name), text);
  }
  const next = join(process.cwd(), 'node_modules/next/dist/bin/next');
  const env = { NODE_ENV: 'production', DATABASE_URL: postgresql };
  await finished([next, 'build', FOLDER], env);
  return serving([next, 'start', FOLDER, '--port', String(port)], env, port, '/');
}

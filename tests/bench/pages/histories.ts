import { existsSync, rmSync } from 'node:fs';
import { join } from 'node:path';
import { writeGroup } from '../whole-program/write-group';
import { Shop } from './pages-of';
import { finished, serving, type Served } from './serving';

/** The build that all histories are served from. */
export const BUILD = '.next-bench';
const BEGIN = 'lib/commands/begin.mjs';

/** Readings that one shop has at most; more are a group of shops in one database, of which one is looked at. */
const A_SHOP = 85_000;

export const shopsOf = (readings: number): number => Math.ceil(readings / A_SHOP);

/** A database with a history. */
export interface Stored {
  /** `DATABASE_URL` */
  address: string;
  /** Null where the database was there before, and nobody counted. */
  readings: number | null;
}

/** A shop that is served, and how it is asked. */
export interface History extends Stored {
  shop: Shop;
  served: Served;
  cookie: string;
}

export const engineOf = ({ address }: Stored): 'SQLite' | 'PostgreSQL' =>
  address.startsWith('file:') ? 'SQLite' : 'PostgreSQL';

const environment = (address: string, folder: string) => ({
  DATABASE_URL: address,
  REHANG_SECRET: 'of the bench, and of nothing else in the world',
  REHANG_STAGING_DIR: join(folder, 'staged'),
  REHANG_DIST_DIR: BUILD,
  NODE_ENV: 'production',
});

/** Shops with so many readings in all, and with all that is worked out of them, in a file of SQLite. */
export async function storedInSqlite(folder: string, readings: number): Promise<Stored> {
  const path = join(folder, `${readings}.db`);
  const stored = { address: `file:${path}`, readings };
  if (existsSync(path)) return stored;
  const env = environment(stored.address, folder);
  const shops = shopsOf(readings);
  for (let index = 1; index <= shops; index++) {
    const file = join(folder, `${readings}-${index}.csv`);
    await writeGroup(file, { readings: readings / shops, seed: 6 + index });
    const named = index === 1 ? [] : [`Shop ${index}`];
    await finished([BEGIN, 'tests/bench/whole-program/load-once.ts', file, ...named], env);
    rmSync(file);
    await finished([BEGIN, 'lib/commands/refresh.ts', String(index)], env);
  }
  return stored;
}

/** Copies it into an empty database of a server: working everything out there again would take many times as long. */
export async function copied(from: Stored, to: string, folder: string): Promise<Stored> {
  await finished([BEGIN, 'lib/commands/copy.ts', from.address, to], environment(to, folder));
  return { ...from, address: to };
}

export async function serve(stored: Stored, port: number, folder: string): Promise<History> {
  const env = { ...environment(stored.address, folder), PORT: String(port) };
  const shop = Shop.parse(JSON.parse(await finished([BEGIN, 'tests/bench/pages/our-shop.ts'], env)));
  const served = await serving(['lib/commands/server.mjs'], env, port, '/health');
  return { ...stored, shop, served, cookie: await comeIn(served.address, shop.invitation) };
}

/** The cookie of a manager who came in by an invitation. */
async function comeIn(address: string, invitation: string): Promise<string> {
  const response = await fetch(`${address}/invitation/${invitation}/take`, {
    method: 'POST',
    redirect: 'manual',
    headers: { origin: address },
    body: new URLSearchParams({ signInName: 'bench', password: 'seven pins along the sill' }),
  });
  return response.headers
    .getSetCookie()
    .map((cookie) => cookie.split(';')[0] ?? '')
    .join('; ');
}

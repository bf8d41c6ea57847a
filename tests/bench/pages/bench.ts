import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { build } from '@/lib/commands/build.mjs';
import { onPostgresql } from '@/tests/bench/on-postgresql';
import { postgresqlPrograms } from '@/tests/postgresql/programs';
import { startServer, type Server } from '@/tests/postgresql/server';
import { BARE_PATH, serveBarePage } from './bare-page';
import { BUILD, copied, engineOf, serve, storedInSqlite, type History, type Stored } from './histories';
import { measureInTurns, type Asked } from './measure';
import { pagesOf } from './pages-of';
import { sayPages, sayWithin, type Beside } from './say-pages';
import type { Served } from './serving';

const PORTS = { bare: 3391, ours: 3392 };

/** Has a page made as if nobody had asked for it before. */
const ANEW = { 'Cache-Control': 'no-cache' };

type Engine = ReturnType<typeof engineOf>;

/** What is measured. */
export interface Asking {
  sizes: readonly number[];
  engines: readonly Engine[];
  /** Some pages; null for all. */
  only: readonly string[] | null;
  /** Addresses of databases with a history, in place of those that are made for the bench. */
  stored: readonly string[];
}

/**
 * Every page of shops with short and long histories, in SQLite and in PostgreSQL, beside a bare page of the same
 * framework that asks a database of the same kind; each asked for by 50 clients at once: medians and 99th percentiles,
 * their ratios to the bare page, growth with the history, what is sent, and what a request takes of the processor, which
 * other work on the machine changes least. All are served at the same time and asked in turns, so that what else the
 * machine does, and how long a server has run, is alike for all that is compared.
 */
export async function benchPages(say: (line: string) => void, asking: Asking): Promise<void> {
  const folder = mkdtempSync(join(tmpdir(), 'rehang-pages-'));
  const servers: Served[] = [];
  let postgresql: Server | null = null;
  try {
    await build(BUILD, 'pipe');
    const programs = asking.engines.includes('PostgreSQL') ? postgresqlPrograms() : null;
    if (programs === null && asking.engines.includes('PostgreSQL'))
      say('PostgreSQL is not installed: pages on it are left out.');
    postgresql = programs === null ? null : await startServer(programs);
    const histories: History[] = [];
    for (const stored of await storedFor(asking, folder, postgresql)) {
      const history = await serve(stored, PORTS.ours + histories.length, folder);
      servers.push(history.served);
      histories.push(history);
    }
    const bare = await serveBarePage(PORTS.bare, postgresql === null ? '' : `${postgresql.address}/postgres`);
    servers.push(bare);
    const all = await measureAll(bare, histories, asking.only);
    for (const [index, history] of histories.entries()) sayPages(say, history, all[index] ?? new Map());
    for (const engine of asking.engines) {
      const own = all.filter((_, index) => histories[index] && engineOf(histories[index]) === engine);
      const [first, last] = [own[0], own.at(-1)];
      if (first !== undefined && last !== undefined) sayWithin(say, engine, first, last);
    }
  } finally {
    for (const server of servers) await server.stop();
    await postgresql?.stop();
    rmSync(folder, { recursive: true });
  }
}

/** Of each kind of database the shorter history first. */
async function storedFor(asking: Asking, folder: string, postgresql: Server | null): Promise<Stored[]> {
  if (asking.stored.length > 0) return asking.stored.map((address) => ({ address, readings: null }));
  const all: Stored[] = [];
  for (const readings of asking.sizes) all.push(await storedInSqlite(folder, readings));
  if (postgresql === null) return all;
  const there = await Promise.all(
    all.map(async (from) => {
      const name = `pages_${from.readings}`;
      await onPostgresql(postgresql.address, 'postgres', `CREATE DATABASE "${name}"`);
      const stored = await copied(from, `${postgresql.address}/${name}`, folder);
      // What a server sees to by and by: how its tables are filled, and which of their rows everybody sees.
      await onPostgresql(postgresql.address, name, 'VACUUM (ANALYZE)');
      return stored;
    }),
  );
  return asking.engines.includes('SQLite') ? [...all, ...there] : there;
}

async function measureAll(
  bare: Served,
  histories: readonly History[],
  only: readonly string[] | null,
): Promise<Map<string, Beside>[]> {
  const all = histories.map(() => new Map<string, Beside>());
  const [any] = histories;
  if (any === undefined) return all;
  const engines = [...new Set(histories.map(engineOf))];
  for (const [name] of pagesOf(any.shop)) {
    if (only?.includes(name) === false) continue;
    const floors = engines.map((engine): Asked => ({
      url: bare.address + BARE_PATH[engine],
      headers: {},
      served: bare,
    }));
    const pages = histories.map(({ shop, served, cookie }) => ({
      url: served.address + (new Map(pagesOf(shop)).get(name) ?? ''),
      headers: { cookie },
      served,
    }));
    const anew = pages.map((page): Asked => ({ ...page, headers: { ...page.headers, ...ANEW } }));
    const found = await measureInTurns([...floors, ...anew, ...pages]);
    for (const [index, history] of histories.entries()) {
      const at = floors.length + index;
      const [floor, made, given] = [
        found[engines.indexOf(engineOf(history))],
        found[at],
        found[at + histories.length],
      ];
      if (floor !== undefined && made !== undefined && given !== undefined)
        all[index]?.set(name, { bare: floor, page: { anew: made, again: given } });
    }
  }
  return all;
}

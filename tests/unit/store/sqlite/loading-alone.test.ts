import { spawn } from 'node:child_process';
import { once } from 'node:events';
import { existsSync, statSync } from 'node:fs';
import { setTimeout as pause } from 'node:timers/promises';
import Database from 'better-sqlite3';
import { describe, expect, it } from 'vitest';
import { closeStore, countJobs, listPeople, loadJobs, saveReadings } from '@/lib/store';
import { engine, loading } from '@/lib/store/connection/database';
import { databaseState } from '@/lib/store/connection/state';
import type { Rows } from '@/lib/store/sql/rows';
import { migrated } from '@/tests/migrated';
import { freshStore } from '@/tests/unit/store/fresh-store';
import { BY_COMMAND, fileNamed, regularShop } from '@/tests/unit/store/invented-readings';
import { saving } from '@/tests/unit/store/saving';
import { fillWithPeople } from './filling';

const store = freshStore();
const path = () => store.url.slice('file:'.length);

/** How the connection that writes has what is written kept until it is committed. */
const journal = async () => (await engine()).sqlite?.writer.pragma('journal_mode', { simple: true });

/** As a program finds it that opens the file. */
function found<Told>(of: (database: Database.Database) => Told): Told {
  const database = new Database(path());
  try {
    return of(database);
  } finally {
    database.close();
  }
}
const journalFound = () => found((database) => database.pragma('journal_mode', { simple: true }));

const load = <Result>(work: (rows: Rows) => Promise<Result>) =>
  loading(store.shop, { shutOut: true }, async (_, rows) => ({ result: await work(rows), sound: [] }));

/** A process that loads as much, alone, and never ends. */
async function loadingElsewhere() {
  const args = ['lib/commands/begin.mjs', 'tests/unit/store/sqlite/loading-process.ts'];
  const child = spawn(process.execPath, args, { stdio: ['ignore', 'pipe', 'inherit'] });
  const [said] = (await once(child.stdout, 'data')) as [Buffer];
  expect(said.toString()).toBe('delete\n');
  const kill = async () => {
    const ended = once(child, 'exit');
    child.kill('SIGKILL');
    await ended;
  };
  return { kill };
}

describe('a load while nobody else has the database open', () => {
  it('goes into the file itself, and to the log again afterwards', async () => {
    const before = await databaseState();
    const during = await load(async (rows) => {
      await fillWithPeople(rows, store.shop);
      await expect(listPeople(store.shop)).rejects.toThrow(/a file is being stored/);
      expect(statSync(path()).size).toBeGreaterThan(10_000_000);
      return journal();
    });
    expect(during).toBe('delete');
    expect(await databaseState()).not.toBe(before);
    expect(await listPeople(store.shop)).toHaveLength(20_000);
    await saveReadings(store.shop, regularShop(1), fileNamed('after.csv'), BY_COMMAND);
    expect(existsSync(`${path()}-wal`)).toBe(true);
    expect(journalFound()).toBe('wal');
  });

  it('that fails leaves nothing, and the log as it was', async () => {
    const failing = load(async (rows) => {
      await fillWithPeople(rows, store.shop);
      throw new Error('no more');
    });
    await expect(failing).rejects.toThrow('no more');
    expect(await listPeople(store.shop)).toEqual([]);
    expect(journalFound()).toBe('wal');
    expect(await load(journal)).toBe('delete');
  });

  it('has those who come meanwhile wait for its end', async () => {
    const come = await load(async () => {
      const come = [saving(store.url, 'P', '2'), saving(store.url, 'Q', '2')];
      const migrating = { done: false };
      const migration = migrated(store.url).then(() => (migrating.done = true));
      await pause(3_000);
      expect(come.flatMap(({ said }) => said())).toEqual([]);
      expect(migrating.done).toBe(false);
      return { codes: Promise.all(come.map(({ ended }) => ended)), migration };
    });
    expect(await come.codes).toEqual([0, 0]);
    expect(await come.migration).toBe(true);
    expect(await countJobs(store.shop)).toBe(4);
    expect(journalFound()).toBe('wal');
  });

  it('that is killed leaves nothing of it, no lock, and the log to whoever comes next', async () => {
    await saveReadings(store.shop, regularShop(2), fileNamed('before.csv'), BY_COMMAND);
    const held = await loadJobs(store.shop);
    await closeStore();
    const other = await loadingElsewhere();
    // Much of it stands in the file, and what the file was like beside it.
    expect(statSync(path()).size).toBeGreaterThan(10_000_000);
    expect(existsSync(`${path()}-journal`)).toBe(true);
    await other.kill();
    expect(await loadJobs(store.shop)).toEqual(held);
    expect(await listPeople(store.shop)).toHaveLength(2);
    expect(existsSync(`${path()}-journal`)).toBe(false);
    expect(found((database) => database.pragma('integrity_check', { simple: true }))).toBe('ok');
    expect(journalFound()).toBe('wal');
    expect(await load(journal)).toBe('delete');
  });
});

describe('a load while somebody else has the database open', () => {
  it('goes to the log as ever, and keeps nobody waiting', async () => {
    await saveReadings(store.shop, regularShop(1), fileNamed('before.csv'), BY_COMMAND);
    const other = new Database(path(), { timeout: 0 });
    const count = () => other.prepare('SELECT count(*) FROM "Person"').pluck().get();
    const before = count();
    const during = await load(async (rows) => {
      await fillWithPeople(rows, store.shop);
      expect(count()).toBe(before);
      expect((await listPeople(store.shop)).length).toBe(before);
      return journal();
    });
    expect(during).toBe('wal');
    expect(count()).toBe(Number(before) + 20_000);
    other.close();
  });

  it('waits where another load has shut it out, and is stored after it', async () => {
    await closeStore();
    const other = await loadingElsewhere();
    const mine = load((rows) => fillWithPeople(rows, store.shop));
    await pause(500);
    await other.kill();
    await mine;
    expect(await listPeople(store.shop)).toHaveLength(20_000);
    expect(journalFound()).toBe('wal');
  });
});

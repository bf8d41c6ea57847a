import { execFile, spawn } from 'node:child_process';
import { once } from 'node:events';
import { mkdtempSync, rmSync, statSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { setTimeout as pause } from 'node:timers/promises';
import Database from 'better-sqlite3';
import { afterAll, describe, expect, it } from 'vitest';
import { collapse, writeMeasurementFile } from '@/lib/measure';
import { closeStore, countJobs, getShop, loadJobs, saveReadings } from '@/lib/store';
import { patiently } from '@/lib/store/connection/patiently';
import { migrate } from '@/lib/store/migrations/migrate';
import { migrationNames, migrationScript } from '@/lib/store/migrations/migration-list';
import { SqliteMigrationAdapter } from '@/lib/store/migrations/sqlite-migration-adapter';
import { freshStore } from '@/tests/unit/store/fresh-store';
import { BY_COMMAND, fileNamed, regularShop } from '@/tests/unit/store/invented-readings';
import { byTheEngine } from './by-the-engine';

const store = freshStore();
const folder = mkdtempSync(join(tmpdir(), 'rehang-lost-'));
afterAll(() => rmSync(folder, { recursive: true, force: true }));

const pathOf = (url: string) => url.slice('file:'.length);

describe('a database that another program has locked', () => {
  it('can be read meanwhile, and takes the file once it is free', async () => {
    await saveReadings(store.shop, regularShop(1), fileNamed('one.csv'), BY_COMMAND);
    const other = new Database(pathOf(store.url));
    other.exec('BEGIN IMMEDIATE');
    const progress = { done: false };
    const storing = saveReadings(store.shop, regularShop(2), fileNamed('two.csv'), BY_COMMAND).then(
      (saved) => {
        progress.done = true;
        return saved;
      },
    );
    await pause(200);
    expect(progress.done).toBe(false);
    expect(await countJobs(store.shop)).toBe(1);
    other.exec('COMMIT');
    other.close();
    expect(await storing).toMatchObject({ newJobs: 1 });
    expect(await loadJobs(store.shop)).toEqual(collapse(regularShop(2)));
  });

  it('is given up in words where it stays so', async () => {
    const busy = Object.assign(new Error('busy'), {
      name: 'DriverAdapterError',
      cause: { kind: 'SocketTimeout' },
    });
    await expect(patiently(() => Promise.reject(busy), 30)).rejects.toThrow(
      /held the database for too long; nothing was stored/,
    );
  });
});

describe('a disk without room', () => {
  /** Loads a file by a process that may not write any file beyond so many blocks of 512 bytes. */
  const loadWithin = (blocks: number, url: string, path: string) =>
    new Promise<{ code: number; out: string; err: string }>((resolve) => {
      const command = `ulimit -f ${blocks}; exec "$0" lib/commands/begin.mjs lib/commands/load.ts "$1"`;
      const env = { ...process.env, DATABASE_URL: url };
      execFile('sh', ['-c', command, process.execPath, path], { env }, (error, out, err) =>
        resolve({ code: error === null ? 0 : Number(error.code), out, err }),
      );
    });

  it('leaves what was stored before, nothing of the new file, and a sentence; with room the file is taken', async () => {
    const url = `file:${join(folder, 'full.db')}`;
    await migrate(url);
    process.env.DATABASE_URL = url;
    await saveReadings((await getShop()).id, regularShop(2), fileNamed('first.csv'), BY_COMMAND);
    const second = join(folder, 'second.csv');
    writeFileSync(second, writeMeasurementFile(regularShop(150)));
    await closeStore();
    const room = Math.ceil(statSync(pathOf(url)).size / 512) + 100;
    for (const round of ['once', 'twice']) {
      const { code, err } = await loadWithin(room, url, second);
      expect(code, round).toBe(1);
      expect(err).toMatch(
        /second\.csv is refused; nothing of it was stored\.\n.*disk that holds the database/,
      );
      expect(err).not.toMatch(/\n\s+at /);
      expect(await loadJobs(1)).toEqual(collapse(regularShop(2)));
    }
    // With room, in this process: nothing has to be learned then.
    expect(await saveReadings(1, regularShop(150), fileNamed('second.csv'), BY_COMMAND)).toMatchObject({
      newJobs: 148,
    });
    expect(await loadJobs(1)).toEqual(collapse(regularShop(150)));
  });
});

describe('a migration that is killed', () => {
  it.each([
    [0, 0],
    [0, 25],
    [1, 0],
    [1, 25],
    [1, 120],
  ])(
    'with %i before it, after %i ms leaves whole migrations only, and can be run again',
    async (first, delay) => {
      const path = join(folder, `killed-${first}-${delay}.db`);
      if (first > 0) await byTheEngine(path, first);
      for (const round of [1, 2]) {
        const args = ['lib/commands/begin.mjs', 'tests/migrating-process.ts', `file:${path}`];
        const child = spawn(process.execPath, args, { stdio: ['ignore', 'pipe', 'inherit'] });
        // Listened for from the start: it may be done before it is killed.
        const ended = once(child, 'exit');
        await once(child.stdout, 'data');
        await pause(delay * round);
        child.kill('SIGKILL');
        await ended;
      }
      await migrate(`file:${path}`);
      expect(await migrate(`file:${path}`)).toEqual([]);
      const database = new Database(path);
      const applied = database.prepare(
        'SELECT migration_name FROM "_prisma_migrations" WHERE rolled_back_at IS NULL AND finished_at IS NOT NULL ORDER BY 1',
      );
      expect(applied.pluck().all()).toEqual(migrationNames('sqlite'));
      expect(database.pragma('integrity_check', { simple: true })).toBe('ok');
      database.close();
    },
  );

  it('between the last of it and the engine’s record is done all the same', async () => {
    const whole = join(folder, 'whole.db');
    const path = join(folder, 'killed-between.db');
    const [first = '', ...others] = migrationNames('sqlite');
    await migrate(`file:${whole}`);
    // As the engine leaves a file before it begins the first: its own table, and a migration that is not finished.
    const database = new Database(path);
    database.exec(`ATTACH '${whole}' AS whole`);
    const table = database.prepare(`SELECT sql FROM whole.sqlite_master WHERE name = '_prisma_migrations'`);
    database.exec(String(table.pluck().get()));
    database
      .prepare(
        `INSERT INTO "_prisma_migrations" SELECT * FROM whole."_prisma_migrations" WHERE migration_name = ?`,
      )
      .run(first);
    database.exec('UPDATE "_prisma_migrations" SET finished_at = NULL, applied_steps_count = 0');
    database.close();
    const adapter = new SqliteMigrationAdapter(path);
    await (await adapter.connect()).executeScript(migrationScript('sqlite', first));
    await adapter.close();
    expect(await migrate(`file:${path}`)).toEqual(others);
  });
});

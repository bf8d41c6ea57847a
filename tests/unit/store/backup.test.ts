import { existsSync, mkdtempSync, readdirSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import Database from 'better-sqlite3';
import { afterAll, describe, expect, it } from 'vitest';
import { collapse } from '@/lib/measure';
import {
  countJobs,
  getShop,
  loadJobs,
  removePerson,
  saveFit,
  savePeople,
  saveReadings,
  saveShop,
} from '@/lib/store';
import { backup } from '@/lib/store/copying/backup';
import { restore } from '@/lib/store/copying/restore';
import { freshStore, statement } from './fresh-store';
import { BY_COMMAND, fileNamed, regularShop } from './invented-readings';
import { BOSS, BY_BOSS, leaveTraces, READINGS, THEM, wholeDatabase } from './one-person';
import { saving, until } from './saving';

const store = freshStore();
const folder = mkdtempSync(join(tmpdir(), 'rehang-backup-'));
afterAll(() => rmSync(folder, { recursive: true, force: true }));

let count = 0;
const newFile = () => join(folder, `backup-${count++}.db`);

const readings = regularShop(5);

/** A shop with something in most tables. */
async function fill() {
  await saveReadings(store.shop, readings, fileNamed('five.csv'), BY_COMMAND);
  await saveShop(store.shop, { name: 'Lakeside', timeZone: 'Europe/Zurich' }, BY_COMMAND);
  await saveFit(store.shop, { inputsVersion: 1, parameters: { b: [1.5, null], a: 'x' }, figures: [] });
}

/** What a database of one file holds. */
function ask(file: string, sql: string): unknown {
  const database = new Database(file, { readonly: true });
  try {
    return database.prepare(sql).pluck().get();
  } finally {
    database.close();
  }
}

describe('a backup', () => {
  it('brings back everything, in place of whatever was stored since', async () => {
    await fill();
    const shop = await getShop();
    const file = newFile();
    await backup(file);
    await saveReadings(store.shop, regularShop(9), fileNamed('nine.csv'), BY_COMMAND);
    await saveShop(store.shop, { name: 'Other' }, BY_COMMAND);
    const { rows } = await restore(file);
    expect(rows.get('Job')).toBe(5);
    expect(rows.get('Reading')).toBe(readings.length);
    expect(await getShop()).toEqual(shop);
    expect(await loadJobs(store.shop)).toEqual(collapse(readings));
    // And the shop goes on from there.
    expect(await saveReadings(store.shop, regularShop(6), fileNamed('six.csv'), BY_COMMAND)).toMatchObject({
      newJobs: 1,
    });
  });

  it('brings back every table as it was, accounts, revisions and trace among them', async () => {
    await savePeople(store.shop, [THEM, BOSS], BY_COMMAND);
    await saveReadings(store.shop, READINGS, fileNamed('readings.csv'), BY_COMMAND);
    await leaveTraces(store.shop);
    const before = await wholeDatabase();
    const file = newFile();
    await backup(file);
    await removePerson(store.shop, THEM.code, 'asked for it', BY_BOSS);
    const { rows } = await restore(file);
    const full = [
      'User',
      'Session',
      'Account',
      'TwoFactor',
      'Verification',
      'Invitation',
      'Trace',
      'ApiToken',
    ];
    for (const table of full) expect(rows.get(table), table).toBeGreaterThan(0);
    expect(await wholeDatabase()).toBe(before);
    await expect(statement('DELETE FROM "Trace"')).rejects.toThrow(/only ever added/);
  });

  it('is one file, which restoring leaves as it was', async () => {
    await fill();
    const file = newFile();
    await backup(file);
    const before = readFileSync(file);
    await restore(file);
    await restore(file);
    expect(readFileSync(file).equals(before)).toBe(true);
    expect(readdirSync(folder).filter((name) => file.endsWith(name) || name.startsWith('.'))).toHaveLength(1);
  });

  it('taken while a process stores has every job that was acknowledged before it, each whole', async () => {
    const { child, said, ended } = saving(store.url, 'K', '200');
    await until(() => said().length > 10);
    const acknowledged = said().filter((line) => line !== 'ready');
    const file = newFile();
    await backup(file);
    child.kill('SIGKILL');
    await ended;
    await restore(file);
    const jobs = new Map((await loadJobs(store.shop)).map((job) => [job.job, job]));
    for (const number of acknowledged) expect(jobs.has(number)).toBe(true);
    const whole = new Map(
      collapse(regularShop(200).map((one) => ({ ...one, job: `K${one.job}` }))).map((job) => [job.job, job]),
    );
    for (const [number, job] of jobs) expect(job).toEqual(whole.get(number));
  });

  it('does not take the place of another file', async () => {
    const file = newFile();
    writeFileSync(file, 'dear');
    await expect(backup(file)).rejects.toThrow(`${file} exists already`);
    expect(readFileSync(file, 'utf8')).toBe('dear');
  });
});

describe('restoring', () => {
  it('refuses in words what is no backup, and changes nothing', async () => {
    await fill();
    const text = newFile();
    writeFileSync(text, 'not a database, but long enough to be looked at as one. '.repeat(50));
    await expect(restore(text)).rejects.toThrow(/is damaged: file is not a database/);
    const other = newFile();
    new Database(other).exec('CREATE TABLE "Job" (id INTEGER)').close();
    await expect(restore(other)).rejects.toThrow(`${other} is no backup of Rehang.`);
    await expect(restore(newFile())).rejects.toThrow(/There is no file/);
    expect(await countJobs(store.shop)).toBe(5);
  });

  it('refuses a backup that lost a page, and one of a later version', async () => {
    await fill();
    const file = newFile();
    await backup(file);
    const later = newFile();
    writeFileSync(later, readFileSync(file));
    new Database(later)
      .exec(`UPDATE "_prisma_migrations" SET migration_name = '29990101000000_later'`)
      .close();
    await expect(restore(later)).rejects.toThrow(
      /comes from a later version of Rehang \(29990101000000_later/,
    );
    const bytes = readFileSync(file);
    bytes.fill(0xaa, bytes.length - 3 * 4096, bytes.length - 4096);
    writeFileSync(file, bytes);
    await expect(restore(file)).rejects.toThrow(/is damaged/);
    expect(await loadJobs(store.shop)).toEqual(collapse(readings));
  });

  it('keeps what was there where a row of the backup is refused', async () => {
    await fill();
    const file = newFile();
    await backup(file);
    const database = new Database(file);
    database.pragma('ignore_check_constraints = ON');
    database.exec(`UPDATE "Round" SET "attempt" = 0`);
    database.close();
    await expect(restore(file)).rejects.toThrow(/check constraint/i);
    expect(await loadJobs(store.shop)).toEqual(collapse(readings));
  });

  it('leaves the shop’s own data whole where it is killed', async () => {
    await saveReadings(store.shop, regularShop(150), fileNamed('many.csv'), BY_COMMAND);
    const file = newFile();
    await backup(file);
    expect(existsSync(file)).toBe(true);
    expect(ask(file, 'SELECT count(*) FROM "Job"')).toBe(150);
    await saveReadings(store.shop, regularShop(151), fileNamed('one more.csv'), BY_COMMAND);
    for (const delay of [60, 250]) {
      const { child, said, ended } = saving(store.url, file, '0', 'restore');
      await until(() => said().includes('ready'));
      await new Promise((resolve) => setTimeout(resolve, delay));
      child.kill('SIGKILL');
      await ended;
      // All of the one or all of the other.
      const jobs = await loadJobs(store.shop);
      expect([150, 151]).toContain(jobs.length);
      expect(jobs).toEqual(collapse(regularShop(jobs.length)));
    }
    await restore(file);
    expect(await countJobs(store.shop)).toBe(150);
  });
});

import { copyFileSync, mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, describe, expect, it } from 'vitest';
import { assessShop } from '@/lib/assess';
import { refresh } from '@/lib/refresh/refresh';
import { batchReportText } from '@/lib/reports';
import {
  closeStore,
  getShop,
  loadJobs,
  recordOutcome,
  saveReadings,
  setMissCost,
  verdictsFor,
} from '@/lib/store';
import { copy } from '@/lib/store/copying/copy';
import { migrate } from '@/lib/store/migrations/migrate';
import { freshStore } from '@/tests/unit/store/fresh-store';
import { BY_COMMAND, fileNamed, regularShop } from '@/tests/unit/store/invented-readings';

const store = freshStore();
const folder = mkdtempSync(join(tmpdir(), 'rehang-copy-'));
afterAll(() => rmSync(folder, { recursive: true, force: true }));

let count = 0;
const newFile = () => `file:${join(folder, `${count++}.db`)}`;

/** Everything below speaks to this database. */
async function on(url: string): Promise<number> {
  await closeStore();
  process.env.DATABASE_URL = url;
  return (await getShop()).id;
}

async function report(url: string): Promise<string> {
  const jobs = await loadJobs(await on(url));
  return [...batchReportText(assessShop(jobs))].join('');
}

/** Made once: learning takes its time. */
let first: string | undefined;

async function filled(): Promise<string> {
  first ??= await makeFilled();
  const url = newFile();
  await closeStore();
  copyFileSync(first.slice('file:'.length), url.slice('file:'.length));
  return url;
}

async function makeFilled(): Promise<string> {
  const url = newFile();
  await migrate(url);
  const shop = await on(url);
  await saveReadings(shop, regularShop(4), fileNamed('four.csv'), BY_COMMAND);
  await recordOutcome(
    shop,
    {
      job: 'J000001',
      setup: 'before-0',
      side: 'L',
      cause: 'gauge',
      note: null,
    },
    { person: 'T1', via: 'page' },
  );
  await setMissCost(shop, { cost: 12 }, BY_COMMAND);
  await refresh(shop, 'this program');
  return url;
}

describe('a copy', () => {
  it('from SQLite to PostgreSQL and back holds the same rows, verdicts and report', async () => {
    const first = await filled();
    const verdicts = await verdictsFor(await on(first), {});
    expect(verdicts).toHaveLength(8);
    const there = await copy(first, store.url);
    expect(there.rows.get('Reading')).toBe(128);
    expect(there.rows.get('RoundVerdict')).toBe(8);
    expect(await verdictsFor(await on(store.url), {})).toEqual(verdicts);
    const second = newFile();
    expect(await copy(store.url, second)).toEqual(there);
    const text = await report(first);
    expect(await report(store.url)).toBe(text);
    expect(await report(second)).toBe(text);
  });

  it('can be worked on: new rows get keys that are free', async () => {
    await copy(await filled(), store.url);
    const shop = await on(store.url);
    expect(await saveReadings(shop, regularShop(6), fileNamed('six.csv'), BY_COMMAND)).toMatchObject({
      newJobs: 2,
    });
    await refresh(shop, 'this program');
    expect(await verdictsFor(shop, {})).toHaveLength(12);
  });

  it('into a database that holds anything is refused in words, and changes nothing', async () => {
    const url = await filled();
    const shop = await on(store.url);
    await saveReadings(shop, regularShop(1), fileNamed('one.csv'), BY_COMMAND);
    await expect(copy(url, store.url)).rejects.toThrow(/The target holds data already/);
    expect(await loadJobs(await on(store.url))).toHaveLength(1);
  });
});

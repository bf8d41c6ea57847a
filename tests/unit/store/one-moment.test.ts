import { describe, expect, it } from 'vitest';
import { atOneMoment, databaseState, savePeople, saveReadings } from '@/lib/store';
import { database, openDatabase } from '@/lib/store/connection/database';
import { databaseUrl } from '@/lib/store/connection/database-url';
import { askAgain } from '@/lib/store/sql/ask';
import { freshStore, onPostgresql } from './fresh-store';
import { BY_COMMAND, fileNamed, regularShop } from './invented-readings';

const store = freshStore({
  filled: (shop) => saveReadings(shop, regularShop(2), fileNamed('two.csv'), BY_COMMAND),
});

const jobs = async () => {
  const rows = await askAgain<{ number: string }>`
    SELECT "number" FROM "Job" WHERE "shopId" = ${store.shop} ORDER BY "number"`;
  return rows.map(({ number }) => number);
};

const rename = { where: { number: 'J000000' }, data: { number: 'A' } };

async function byAnotherProcess(): Promise<void> {
  const another = openDatabase(databaseUrl());
  await another.job.updateMany(rename);
  await another.$disconnect();
}

describe('what is asked as of one moment', () => {
  it('tells at once of what this process writes meanwhile', async () => {
    const told = await atOneMoment(async () => {
      const before = await jobs();
      await database().job.updateMany(rename);
      const then = await jobs();
      await savePeople(store.shop, [{ code: 'NEW', name: '', role: 'trainer', active: true }], BY_COMMAND);
      await database().$transaction(async (queries) => {
        await queries.job.updateMany({ where: { number: 'A' }, data: { number: 'B' } });
      });
      return [before, then, await jobs()];
    });
    expect(told).toEqual([
      ['J000000', 'J000001'],
      ['A', 'J000001'],
      ['B', 'J000001'],
    ]);
  });

  it('is asked anew once that moment is over, also by what was begun within it', async () => {
    const told = await atOneMoment(async (end) => {
      const before = await jobs();
      end();
      await byAnotherProcess();
      return [before, await jobs()];
    });
    expect(told).toEqual([
      ['J000000', 'J000001'],
      ['A', 'J000001'],
    ]);
  });

  it('tells whoever asks after it of what another process wrote within it', async () => {
    await atOneMoment(async () => {
      await jobs();
      await byAnotherProcess();
      await jobs();
    });
    expect(await jobs()).toEqual(['A', 'J000001']);
    expect(await atOneMoment(() => jobs())).toEqual(['A', 'J000001']);
  });

  it.runIf(onPostgresql)('has a server say once what it holds', async () => {
    const [before, after, now] = await atOneMoment(async (end) => {
      const first = await databaseState();
      await byAnotherProcess();
      const second = await databaseState();
      end();
      return [first, second, await databaseState()];
    });
    expect(after).toBe(before);
    expect(now).not.toBe(before);
  });
});

it('what many ask in one moment is told by what the database holds after the last of them asked', async () => {
  const before = await Promise.all([databaseState(), databaseState()]);
  const written = byAnotherProcess();
  const meanwhile = databaseState();
  await written;
  const after = await Promise.all([databaseState(), databaseState()]);
  expect(new Set(before).size).toBe(1);
  expect(new Set(after).size).toBe(1);
  expect(after[0]).not.toBe(before[0]);
  await meanwhile;
});

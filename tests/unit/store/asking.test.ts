import { describe, expect, it } from 'vitest';
import { countJobs, databaseFailure, saveReadings } from '@/lib/store';
import { database, openDatabase } from '@/lib/store/connection/database';
import { databaseUrl } from '@/lib/store/connection/database-url';
import { parsedOnce } from '@/lib/store/connection/parsed-once';
import { ask, askAgain } from '@/lib/store/sql/ask';
import { freshStore } from './fresh-store';
import { BY_COMMAND, fileNamed, regularShop } from './invented-readings';

const store = freshStore();

const saved = () => saveReadings(store.shop, regularShop(2), fileNamed('two.csv'), BY_COMMAND);
const jobs = () =>
  askAgain<{ number: string }>`SELECT "number" FROM "Job" WHERE "shopId" = ${store.shop} ORDER BY "number"`;

describe('a question of our own', () => {
  it('gives times, truths, documents and numbers as Prisma does', async () => {
    const document = { of: ['many', 1.5, null], long: 'x'.repeat(2000) };
    await database().shopFit.create({
      data: {
        ...{ shopId: store.shop, inputsVersion: 7, parameters: document, figures: [] },
        fittedAt: new Date(1_700_000_000_123),
      },
    });
    const [fit] = await ask`SELECT f.*, s."demo" FROM "ShopFit" f JOIN "Shop" s ON s."id" = f."shopId"
      WHERE f."fittedAt" = ${new Date(1_700_000_000_123)} AND s."demo" = ${false}`;
    const { demo, ...expected } = { ...(await database().shopFit.findFirstOrThrow()), demo: false };
    expect(fit).toEqual({ ...expected, demo });
  });

  it('asked again is answered with what was written since, by this process or by another', async () => {
    await saved();
    expect(await jobs()).toHaveLength(2);
    expect(await countJobs(store.shop)).toBe(2);
    await database().job.updateMany({ where: { number: 'J000000' }, data: { number: 'A' } });
    expect(await jobs()).toContainEqual({ number: 'A' });
    const another = openDatabase(databaseUrl());
    await another.job.updateMany({ where: { number: 'A' }, data: { number: 'B' } });
    await another.$disconnect();
    expect(await jobs()).toContainEqual({ number: 'B' });
  });

  it('that the database refuses is told of in its words', async () => {
    const refused: unknown = await ask`SELECT "wheels" FROM "Job"`.catch((error: unknown) => error);
    expect(databaseFailure(refused)).toMatch(/^The database refused it: .*wheels/);
  });

  it('gives nobody an answer that somebody else could have changed', async () => {
    await saved();
    const [job] = await jobs();
    Reflect.set(job ?? {}, 'number', 'changed');
    expect((await jobs()).map(({ number }) => number)).toEqual(['J000000', 'J000001']);
    const text = JSON.stringify({ list: Array.from({ length: 500 }, (_, i) => ({ i })) });
    const parsed = parsedOnce(text) as { list: { i: number }[] };
    expect(parsed).toEqual(JSON.parse(text));
    expect(() => parsed.list.reverse()).toThrow(TypeError);
    expect(() => Object.assign(parsed.list[0] ?? {}, { i: 9 })).toThrow(TypeError);
  });
});

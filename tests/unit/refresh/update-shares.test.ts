import { describe, expect, it } from 'vitest';
import { followFigures } from '@/lib/refresh/follow-figures';
import { followJob } from '@/lib/refresh/follow-job';
import { MADE_FROM } from '@/lib/refresh/made-from';
import { refresh } from '@/lib/refresh/refresh';
import { readFit, readFitWithAge } from '@/lib/refresh/stored-fit';
import { storedShares, updateShares, waitingShares } from '@/lib/refresh/update-shares';
import { excludeReading, includeReading, saveReadings } from '@/lib/store';
import { database } from '@/lib/store/connection/database';
import { freshStore } from '@/tests/unit/store/fresh-store';
import { BY_COMMAND, fileNamed, regularShop } from '@/tests/unit/store/invented-readings';

const many = regularShop(30);
const last = many.filter(({ job, stage }) => job === 'J000029' && stage === 'after');
const first = many.filter((reading) => !last.includes(reading));
/** The one reading of a job. */
const alone = last.slice(0, 1).map((reading) => ({ ...reading, job: 'ALONE' }));

const store = freshStore({
  filled: async (shop) => {
    await saveReadings(shop, [...first, ...alone], fileNamed('first.csv'), BY_COMMAND);
    await refresh(shop, 'this program');
  },
});

/** Everything that is kept of the answers, and again after all of it was worked out from nothing but the jobs. */
async function keptAndAnew() {
  const kept = await answers();
  await database().jobShare.deleteMany();
  await database().fitAnswer.deleteMany();
  await refresh(store.shop, 'this program');
  return { kept, anew: await answers() };
}

/** As if so many rounds had been learned from that a few more do not matter. */
async function longHistory(): Promise<void> {
  const fit = await database().shopFit.findFirstOrThrow({ orderBy: { id: 'desc' } });
  const parameters = { ...(fit.parameters as object), unlearned: 0 };
  await database().shopFit.update({ where: { id: fit.id }, data: { parameters } });
}

/** Without the name of the revision, which is another each time. */
async function answers(): Promise<Map<string, unknown>> {
  const rows = await database().fitAnswer.findMany({ orderBy: { question: 'asc' } });
  return new Map(
    rows.map(({ question, document }) => [
      question,
      question === MADE_FROM ? { ...(document as object), revision: null } : document,
    ]),
  );
}

describe('what a job adds to the answers', () => {
  it('is added up to the answers that all jobs together give, after one of them changed', async () => {
    const before = await answers();
    await saveReadings(store.shop, last, fileNamed('last.csv'), BY_COMMAND);
    await refresh(store.shop, 'this program');
    const { kept, anew } = await keptAndAnew();
    expect(kept).toEqual(anew);
    expect(kept).not.toEqual(before);
  });

  it('is not lost where a refresh was broken off after it was kept', async () => {
    await saveReadings(store.shop, last, fileNamed('last.csv'), BY_COMMAND);
    const fit = await readFit(store.shop);
    if (fit === null) throw new Error('Nothing was learned.');
    await followJob(store.shop, 'J000029', 'this program');
    const waiting = await waitingShares(store.shop, fit, 'UTC');
    expect(waiting).toHaveLength(1);
    await updateShares(store.shop, fit, 'UTC', waiting);
    await refresh(store.shop, 'this program');
    const { kept, anew } = await keptAndAnew();
    expect(kept).toEqual(anew);
  });

  it('waits for the verdicts that it rests on', async () => {
    await saveReadings(store.shop, last, fileNamed('last.csv'), BY_COMMAND);
    const fit = await readFit(store.shop);
    if (fit === null) throw new Error('Nothing was learned.');
    expect(await waitingShares(store.shop, fit, 'UTC')).toEqual([]);
    await refresh(store.shop, 'this program');
    const { kept, anew } = await keptAndAnew();
    expect(kept).toEqual(anew);
  });

  it('follows in the serving process, reading by reading, to the answers that all jobs together give', async () => {
    const program = 'this program';
    const follows = async (changes: number) => {
      await followJob(store.shop, 'J000029', program);
      await longHistory();
      return followFigures(store.shop, ['J000029'], changes, program);
    };
    const [one, ...others] = last;
    if (one === undefined) throw new Error('There is no reading.');
    await saveReadings(store.shop, [one], fileNamed('one.csv'), BY_COMMAND);
    expect(await follows(1)).toBe(true);
    // Gone on with from what this process holds.
    await saveReadings(store.shop, others, fileNamed('others.csv'), BY_COMMAND);
    expect(await follows(1)).toBe(true);
    expect((await readFitWithAge(store.shop))?.stale).toBe(false);
    // Something else changed too: a refresh has to look for it.
    await excludeReading(store.shop, { ...one, reason: 'misread' }, { person: 'T0', via: 'page' });
    await includeReading(store.shop, { ...one, reason: 'not misread' }, { person: 'T0', via: 'page' });
    expect(await follows(1)).toBe(false);
    expect(await follows(2)).toBe(true);
    const { kept, anew } = await keptAndAnew();
    expect(kept).toEqual(anew);
  });

  it('goes with the last of its readings that counts', async () => {
    const jobs = async () => {
      const found: string[] = [];
      for await (const { job } of storedShares(store.shop)) found.push(job);
      return found;
    };
    expect(await jobs()).toContain('ALONE');
    for (const one of alone)
      await excludeReading(store.shop, { ...one, reason: 'misread' }, { person: 'T0', via: 'page' });
    await refresh(store.shop, 'this program');
    expect(await jobs()).not.toContain('ALONE');
    const { kept, anew } = await keptAndAnew();
    expect(kept).toEqual(anew);
  });
});

import { readdirSync, statSync } from 'node:fs';
import { afterAll, describe, expect, it } from 'vitest';
import { getReady } from '@/lib/store/reader';
import { readPath } from '@/lib/store/reader/read-path';
import { ReadingThread } from '@/lib/store/reader/reading-thread';
import { tableReadings, type FileReadings } from '@/lib/store/save/file-readings';

const FOLDER = 'tests/reference/samples';
const files = readdirSync(FOLDER).filter((name) => name.endsWith('.csv'));

const threads: ReadingThread[] = [];
afterAll(async () => {
  for (const thread of threads) await thread.close();
});

const pathTo = (name: string) => ({
  ...{
    path: `${FOLDER}/${name}`,
    name,
    bytes: statSync(`${FOLDER}/${name}`, { throwIfNoEntry: false })?.size ?? 0,
  },
  ...{ timeZone: 'UTC', book: new Map() },
});

/** All that is asked of the readings. */
async function toldBy(readings: FileReadings) {
  const samples = await readings.samples();
  const jobs = readings.jobs.map((_, job) => job);
  const rows = await readings.layOut(jobs);
  return { samples, rows, all: await readings.all(), of: await readings.readingsOf(jobs.slice(0, 2)) };
}

describe('a thread that reads a file', () => {
  it.each(files)('says of %s what reading it here says', async (name) => {
    const here = await readPath(pathTo(name), () => undefined);
    const shares: number[] = [];
    const thread = new ReadingThread((share) => shares.push(share));
    threads.push(thread);
    const { held, ...there } = await thread.read(pathTo(name));
    const { readings: table, ...rest } = here;
    expect(there).toEqual({ ...rest, holds: false });
    expect(shares.at(-1)).toBe(1);
    expect(held === null).toBe(table === null);
    if (held === null || table === null) return;
    const [mine, its] = [tableReadings(table), thread.readings(held)];
    expect(its.jobs).toEqual(mine.jobs);
    expect(await toldBy(its)).toEqual(await toldBy(mine));
  });

  it('ends with the error of what was asked of it', async () => {
    const thread = new ReadingThread(() => undefined);
    threads.push(thread);
    await expect(thread.read({ ...pathTo('none'), path: 'no/such/file.csv' })).rejects.toThrow(/ENOENT/);
    await expect(thread.read(pathTo('none'))).rejects.toThrow(/ENOENT/);
  });

  it('reads when it was begun before it was asked for, and told later whom to tell', async () => {
    const thread = new ReadingThread();
    threads.push(thread);
    thread.holdsOpen(false);
    const shares: number[] = [];
    thread.tell = (share) => shares.push(share);
    thread.holdsOpen(true);
    const [name = ''] = files;
    const { summary } = await thread.read(pathTo(name));
    expect(summary).toEqual((await readPath(pathTo(name), () => undefined)).summary);
    expect(shares.at(-1)).toBe(1);
  });

  it('is not begun for a file that cannot be read: that is told by whoever reads it', async () => {
    await expect(getReady(['no/such/file.csv'])).resolves.toBeUndefined();
  });
});

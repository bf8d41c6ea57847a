import { setTimeout as pause } from 'node:timers/promises';
import { describe, expect, it } from 'vitest';
import { collapse } from '@/lib/measure';
import { countJobs, getShop, inputsVersion, loadJobs, saveReadings } from '@/lib/store';
import { freshStore } from './fresh-store';
import { BY_COMMAND, fileNamed, regularShop } from './invented-readings';
import { saving, until } from './saving';

const store = freshStore();

describe('two processes that store at the same time', () => {
  it('lose nothing of what was acknowledged', async () => {
    const both = [saving(store.url, 'P', '10'), saving(store.url, 'Q', '10')];
    const codes = await Promise.all(both.map(({ ended }) => ended));
    expect(codes).toEqual([0, 0]);
    const jobs = await loadJobs(store.shop);
    const acknowledged = both.flatMap(({ said }) => said()).filter((line) => line !== 'ready');
    expect(acknowledged).toHaveLength(20);
    expect(jobs.map((job) => job.job).sort()).toEqual(acknowledged.sort());
    const expected = collapse(
      ['P', 'Q'].flatMap((prefix) => regularShop(10).map((one) => ({ ...one, job: `${prefix}${one.job}` }))),
    );
    expect(jobs).toEqual(expected);
    expect(await inputsVersion(store.shop)).toBe(20);
  });

  it('make one shop where the database has none', async () => {
    const [first, second] = await Promise.all([getShop(), getShop()]);
    expect(first.id).toBe(second.id);
  });
});

describe('a process killed while it stores', () => {
  it.each([100, 600])('leaves nothing of its file, and no lock, after %i ms of it', async (delay) => {
    const { child, said, ended } = saving(store.url, 'K', '1500', 'at-once');
    await until(() => said().includes('ready'));
    await pause(delay);
    child.kill('SIGKILL');
    await ended;
    expect(said()).not.toContain('all');
    expect(await countJobs(store.shop)).toBe(0);
    const readings = regularShop(1);
    expect(await saveReadings(store.shop, readings, fileNamed('after.csv'), BY_COMMAND)).toMatchObject({
      added: readings.length,
    });
  });

  it('leaves every file that it had acknowledged', async () => {
    const { child, said, ended } = saving(store.url, 'K', '400');
    await until(() => said().length > 5);
    child.kill('SIGKILL');
    await ended;
    const acknowledged = said().filter((line) => line !== 'ready');
    const jobs = new Map((await loadJobs(store.shop)).map((job) => [job.job, job]));
    for (const number of acknowledged) expect(jobs.has(number)).toBe(true);
    // One more may have been stored without the news of it getting out.
    expect(jobs.size - acknowledged.length).toBeLessThanOrEqual(1);
    const whole = new Map(
      collapse(regularShop(400).map((one) => ({ ...one, job: `K${one.job}` }))).map((job) => [job.job, job]),
    );
    for (const [number, job] of jobs) expect(job).toEqual(whole.get(number));
  });
});

describe('reading while another transaction is open', () => {
  it('sees only what was kept', async () => {
    const readings = regularShop(40);
    const storing = saveReadings(store.shop, readings, fileNamed('forty.csv'), BY_COMMAND);
    const seen = new Set<number>();
    const progress = { done: false };
    void storing.then(() => (progress.done = true));
    while (!progress.done) {
      seen.add(await countJobs(store.shop));
      await pause(1);
    }
    await storing;
    seen.add(await countJobs(store.shop));
    expect([...seen].filter((count) => count !== 0 && count !== 40)).toEqual([]);
    expect(seen).toContain(40);
  });
});

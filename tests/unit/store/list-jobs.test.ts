import { describe, expect, it } from 'vitest';
import { collapse, type Reading } from '@/lib/measure';
import {
  countJobs,
  countOutcomes,
  getJob,
  getJobRow,
  jobsWithoutOutcome,
  listJobs,
  listSetups,
  listSheets,
  loadJobs,
  readingsFor,
  readingsOfSetup,
  saveJobOutcomes,
  saveReadings,
  saveShop,
  type JobFilter,
  type JobOutcome,
  type JobQuery,
} from '@/lib/store';
import { freshStore } from './fresh-store';
import { BY_COMMAND, fileNamed, reading, regularShop } from './invented-readings';

const store = freshStore({
  filled: (shop) => saveReadings(shop, readings, fileNamed('twelve.csv'), BY_COMMAND),
});
const readings = regularShop(12);
const numbers = (query: JobQuery) =>
  listJobs(store.shop, query).then(({ rows }) => rows.map((row) => row.job));
const counted = (filter: JobFilter) => countJobs(store.shop, filter);

const outcome = (job: string, change: Partial<JobOutcome & { version: number }> = {}) => ({
  job,
  right: true,
  technician: 'T0',
  at: Date.UTC(2026, 0, 31, 23, 30),
  controlled: 8,
  out: 0,
  sections: { front: { controlled: 4, out: 0 }, rear: { controlled: 4, out: 0 } },
  version: 1,
  ...change,
});

describe('listJobs', () => {
  it('shows the newest first, a page at a time, with the total', async () => {
    const first = await listJobs(store.shop, { pageSize: 5 });
    expect(first.total).toBe(12);
    expect(first.rows.map((row) => row.job)).toEqual(['J000011', 'J000010', 'J000009', 'J000008', 'J000007']);
    expect(await numbers({ pageSize: 5, page: 3 })).toEqual(['J000001', 'J000000']);
    expect(await numbers({ pageSize: 5, page: 4 })).toEqual([]);
    expect(await numbers({ page: -3, pageSize: 0 })).toHaveLength(12);
  });

  it('says of a job what its readings say', async () => {
    expect(await getJobRow(store.shop, 'J000004')).toEqual({
      job: 'J000004',
      sheet: 'S4',
      stage: 'after',
      attempt: 1,
      openedAt: Math.min(...readings.filter((one) => one.job === 'J000004').map((one) => one.takenAt)),
      lastReadAt: Math.max(...readings.filter((one) => one.job === 'J000004').map((one) => one.takenAt)),
      technicians: ['T1'],
      rounds: 2,
      setups: 8,
      readings: 32,
      excluded: 0,
      outcome: 'unknown',
      out: null,
      sectionsOut: [],
    });
    expect(await getJobRow(store.shop, 'J999999')).toBeNull();
    expect(await getJob(store.shop, 'J999999')).toBeNull();
  });

  it('searches number and sheet, upper and lower case alike, every word', async () => {
    expect(await numbers({ search: 'j000003' })).toEqual(['J000003']);
    expect(await numbers({ search: ' s3 ' })).toEqual(['J000008', 'J000003']);
    expect(await numbers({ search: 's3 008' })).toEqual(['J000008']);
    expect(await numbers({ search: 'nothing' })).toEqual([]);
  });

  it('takes search signs for what they are', async () => {
    await saveReadings(store.shop, [reading({ job: '100%_A' })], fileNamed('signs.csv'), BY_COMMAND);
    expect(await numbers({ search: '%' })).toEqual(['100%_A']);
    expect(await numbers({ search: '0%_' })).toEqual(['100%_A']);
  });

  it('filters by technician, sheet, stage and time', async () => {
    expect(await counted({ technician: 'T2' })).toBe(4);
    expect(await counted({ technician: 'T2', sheet: 'S0' })).toBe(1);
    expect(await counted({ stage: 'before' })).toBe(0);
    const [from, to] = [2, 5].map((job) => Date.UTC(2026, 0, 5, 8, 0) + job * 40 * 60_000);
    expect(await numbers({ from, to, sort: 'job' })).toEqual(['J000002', 'J000003', 'J000004']);
  });

  it('sorts either way', async () => {
    expect((await numbers({ sort: 'job' }))[0]).toBe('J000000');
    expect((await numbers({ sort: 'job', direction: 'desc' }))[0]).toBe('J000011');
    expect((await numbers({ sort: 'technician' })).slice(0, 2)).toEqual(['J000009', 'J000006']);
    expect((await numbers({ sort: 'sheet', direction: 'desc' }))[0]).toBe('J000009');
  });
});

describe('outcomes', () => {
  it('are waited for by every job whose readings changed since', async () => {
    expect(await jobsWithoutOutcome(store.shop)).toHaveLength(12);
    await saveJobOutcomes(store.shop, [outcome('J000001')]);
    expect(await jobsWithoutOutcome(store.shop)).toHaveLength(11);
    const more = readings
      .filter((one) => one.job === 'J000001')
      .map((one) => ({ ...one, repeat: one.repeat + 2 }));
    await saveReadings(store.shop, more, fileNamed('more.csv'), BY_COMMAND);
    expect(await jobsWithoutOutcome(store.shop)).toContainEqual({ job: 'J000001', version: 2 });
  });

  it('made from older readings never replace newer ones', async () => {
    await saveJobOutcomes(store.shop, [outcome('J000001', { version: 2, right: false, out: 1 })]);
    await saveJobOutcomes(store.shop, [outcome('J000001', { version: 1 })]);
    expect(await getJobRow(store.shop, 'J000001')).toMatchObject({ outcome: 'wrong', out: 1 });
  });

  it('are what lists filter and sort by', async () => {
    await saveJobOutcomes(store.shop, [
      outcome('J000001'),
      outcome('J000002', { right: false, out: 2, sections: { rear: { controlled: 4, out: 2 } } }),
    ]);
    expect(await numbers({ outcome: 'right' })).toEqual(['J000001']);
    expect(await numbers({ outcome: 'wrong' })).toEqual(['J000002']);
    expect(await counted({ outcome: 'unknown' })).toBe(10);
    expect(await numbers({ section: 'rear' })).toEqual(['J000002']);
    expect(await counted({ section: 'front' })).toBe(0);
    expect((await getJobRow(store.shop, 'J000002'))?.sectionsOut).toEqual(['rear']);
    expect((await numbers({ sort: 'outcome', direction: 'desc' })).slice(0, 2)).toEqual([
      'J000001',
      'J000002',
    ]);
  });

  it('are counted by month in the time zone of the shop, by technician, sheet and section', async () => {
    await saveShop(store.shop, { timeZone: 'Europe/Zurich' }, BY_COMMAND);
    await saveJobOutcomes(store.shop, [
      outcome('J000001'),
      outcome('J000002', {
        right: false,
        technician: 'T1',
        at: Date.UTC(2026, 0, 20),
        out: 1,
        sections: { front: { controlled: 4, out: 1 } },
      }),
      outcome('J000003', { right: null, technician: null, at: null, controlled: 0, sections: {} }),
    ]);
    expect(await countOutcomes(store.shop, 'shop')).toEqual([{ key: '', jobs: 2, right: 1 }]);
    // Half past eleven at night in UTC is the next month in Zurich.
    expect(await countOutcomes(store.shop, 'month')).toEqual([
      { key: '2026-01', jobs: 1, right: 0 },
      { key: '2026-02', jobs: 1, right: 1 },
    ]);
    await saveShop(store.shop, { timeZone: 'UTC' }, BY_COMMAND);
    expect(await countOutcomes(store.shop, 'month')).toEqual([{ key: '2026-01', jobs: 2, right: 1 }]);
    expect(await countOutcomes(store.shop, 'technician')).toEqual([
      { key: 'T0', jobs: 1, right: 1 },
      { key: 'T1', jobs: 1, right: 0 },
    ]);
    expect(await countOutcomes(store.shop, 'sheet', { sheet: 'S2' })).toEqual([
      { key: 'S2', jobs: 1, right: 0 },
    ]);
    expect(await countOutcomes(store.shop, 'section')).toEqual([
      { key: 'front', jobs: 2, right: 1 },
      { key: 'rear', jobs: 1, right: 1 },
    ]);
    expect(await countOutcomes(store.shop, 'shop', { search: 'nothing' })).toEqual([]);
  });
});

describe('what is read of jobs', () => {
  it('is chosen by the same filter everywhere', async () => {
    const jobs = await loadJobs(store.shop, { technician: 'T1' });
    expect(jobs).toEqual(collapse(readings.filter((one) => one.technician === 'T1')));
    const found: Reading[] = [];
    for await (const one of readingsFor(store.shop, { technician: 'T1' })) found.push(one);
    expect(collapse(found)).toEqual(jobs);
  });

  it('can be one setup with its readings', async () => {
    const own = readings
      .filter((one) => one.job === 'J000002' && one.setup === 'after-3')
      .sort((a, b) => a.takenAt - b.takenAt || a.line - b.line);
    expect(await readingsOfSetup(store.shop, 'J000002', 'after-3')).toEqual(own);
    expect(await readingsOfSetup(store.shop, 'J000002', 'none')).toEqual([]);
  });

  it('can be chosen within jobs by gauge, setup and quantity', async () => {
    const count = async (filter: Parameters<typeof readingsFor>[1]) => {
      let found = 0;
      for await (const _ of readingsFor(store.shop, filter)) found += 1;
      return found;
    };
    expect(await count({ gauge: 'C1' })).toBe(96);
    expect(await count({ jobs: ['J000003'], setup: 'before-0' })).toBe(4);
    expect(await count({ quantity: 'length' })).toBe(0);
    expect(await count({ jobs: [] })).toBe(0);
  });

  it('can be the setups of a technician or a gauge, newest first', async () => {
    const { rows, total } = await listSetups(store.shop, { technician: 'T0', gauge: 'C3', pageSize: 3 });
    expect(total).toBe(8);
    expect(rows.map((row) => [row.job, row.setup])).toEqual([
      ['J000009', 'after-3'],
      ['J000009', 'before-3'],
      ['J000006', 'after-3'],
    ]);
    expect(rows[0]?.observations.map(({ side, n }) => [side, n])).toEqual([
      ['L', 2],
      ['R', 2],
    ]);
  });

  it('counts the jobs of each sheet', async () => {
    expect((await listSheets(store.shop))[0]).toMatchObject({ name: 'S0', dimensions: 8, jobs: 3 });
  });
});

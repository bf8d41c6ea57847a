import { mkdtempSync, readdirSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, beforeEach, describe, expect, it, vi } from 'vitest';
import { GET as getJob } from '@/app/api/v1/jobs/[job]/route';
import { GET as getMeasurements, POST as postMeasurements } from '@/app/api/v1/measurements/route';
import { GET as getReport } from '@/app/api/v1/report/route';
import { GET as getScheduled } from '@/app/api/v1/reports/[id]/route';
import { GET as listScheduled } from '@/app/api/v1/reports/route';
import { GET as getMetrics } from '@/app/metrics/route';
import { REQUESTS } from '@/lib/interface';
import { MAX_FILE_BYTES, readMeasurementFile, writeMeasurementFile } from '@/lib/measure';
import { refresh } from '@/lib/refresh/refresh';
import { batchReportText } from '@/lib/reports';
import { assessShop } from '@/lib/assess';
import { loadJobs, saveReadings } from '@/lib/store';
import { database } from '@/lib/store/connection/database';
import { claimReport, failReport, keepReport } from '@/lib/store/reports';
import { createToken, TOKEN_SCOPES, type TokenScope } from '@/lib/store/tokens';
import { freshStore } from '@/tests/unit/store/fresh-store';
import { fileNamed, regularShop } from '@/tests/unit/store/invented-readings';
import { report as reportSchema } from '@/lib/interface/schemas/report';
import { job as jobSchema, problem, refusedFile, taken } from '@/lib/interface/schemas/answers';
import { call, fields } from './calls';

// What follows a load goes on in a process of its own, which is not what is asked here.
vi.mock('@/lib/refresh', async (original) => ({ ...(await original<object>()), followNow: vi.fn() }));

const store = freshStore();
const staging = mkdtempSync(join(tmpdir(), 'rehang-interface-'));
vi.stubEnv('REHANG_STAGING_DIR', staging);
vi.stubEnv('REHANG_LOG', 'silent');
afterAll(() => rmSync(staging, { recursive: true, force: true }));

const actor = { person: null, via: 'command' } as const;
const readings = regularShop(2);
const text = writeMeasurementFile(readings);
let serial = 0;

const tokenFor = (shop: number, ...scopes: TokenScope[]) =>
  createToken(shop, { name: `token ${serial++}`, scopes, expiresAt: null }, actor);

/** The token of the shop, good for everything. */
let token = '';
beforeEach(async () => {
  token = await tokenFor(store.shop, ...TOKEN_SCOPES);
});

const send = (body: string, query = '', as: string | null = token) =>
  postMeasurements(call(`/api/v1/measurements${query}`, as, { body }));
const jobNamed = (job: string, as: string | null = token) =>
  getJob(call(`/api/v1/jobs/${job}`, as), { params: Promise.resolve({ job }) });
const reportOf = (id: number, as: string | null = token) =>
  getScheduled(call(`/api/v1/reports/${id}`, as), { params: Promise.resolve({ id: String(id) }) });

/** Every endpoint with the scope that it takes. */
const ENDPOINTS: [TokenScope, string, (as: string | null) => Promise<Response>][] = [
  ['measurements:write', 'sending measurements', (as) => send(text, '', as)],
  ['measurements:read', 'fetching measurements', (as) => getMeasurements(call('/api/v1/measurements', as))],
  ['reports:read', 'the report', (as) => getReport(call('/api/v1/report', as))],
  ['reports:read', 'a job', (as) => jobNamed('J000000', as)],
  ['reports:read', 'the list of reports', (as) => listScheduled(call('/api/v1/reports', as))],
  ['reports:read', 'a scheduled report', (as) => reportOf(1, as)],
  ['metrics:read', 'metrics', (as) => getMetrics(call('/metrics', as))],
];

describe('the entrance', () => {
  it('refuses every request without a token, with an unknown one and with any scope but its own', async () => {
    for (const [scope, what, ask] of ENDPOINTS) {
      for (const as of [null, `rehang_${'A'.repeat(43)}`]) {
        const refused = await ask(as);
        expect(refused.status, what).toBe(401);
        expect(refused.headers.get('www-authenticate')).toMatch(/^Bearer/);
        problem.parse(await refused.json());
      }
      const others = await tokenFor(store.shop, ...TOKEN_SCOPES.filter((other) => other !== scope));
      expect((await ask(others)).status, what).toBe(403);
    }
    expect(await database().reading.count()).toBe(0);
  });

  it('lets so many requests of a token pass in a minute and then says how long to wait', async () => {
    const limited = await tokenFor(store.shop, 'reports:read');
    const { id } = await database().apiToken.findFirstOrThrow({ orderBy: { id: 'desc' } });
    await listScheduled(call('/api/v1/reports', limited));
    await database().attempt.updateMany({ data: { points: REQUESTS.points } });
    const refused = await listScheduled(call('/api/v1/reports', limited));
    expect(refused.status).toBe(429);
    expect(Number(refused.headers.get('retry-after'))).toBeGreaterThan(0);
    expect(id).toBeGreaterThan(0);
    expect((await listScheduled(call('/api/v1/reports', token))).status).toBe(200);
  });
});

describe('sending measurements', () => {
  it('stores a file once: the second time nothing is added', async () => {
    const first = await send(text);
    expect(first.status).toBe(201);
    expect(taken.parse(await first.json()).stored).toMatchObject({ added: 64, new_jobs: 2 });
    const second = await send(text);
    expect(second.status).toBe(200);
    expect(taken.parse(await second.json()).stored).toMatchObject({ added: 0, already_there: 64, jobs: [] });
    expect(readdirSync(staging)).toEqual([]);
  });

  it('only judges the file on a dry run', async () => {
    const answer = await send(text, '?dry_run=true&name=try.csv');
    expect(answer.status).toBe(200);
    expect(taken.parse(await answer.json())).toMatchObject({
      dry_run: true,
      file: { name: 'try.csv' },
      stored: null,
    });
    expect(await database().reading.count()).toBe(0);
  });

  it('refuses a faulty file as a whole with every fault by line and column', async () => {
    const faulty = text.replace(',before,', ',during,').replace(/,after,/, ',later,');
    const answer = await send(faulty);
    expect(answer.status).toBe(422);
    const { faults, fault_count } = refusedFile.parse(await answer.json());
    expect(fault_count).toBe(2);
    expect(faults).toMatchObject([{ line: 2, column: 'stage' }, { column: 'stage' }]);
    expect(faults[0]?.reason).toMatch(/"during" is none of before, after/);
    expect(await database().reading.count()).toBe(0);
  });

  it('refuses what contradicts the stored readings, by line', async () => {
    await send(text);
    const answer = await send(text.replace(/,[\d.]+,\r\n/, ',311,\r\n'));
    expect(answer.status).toBe(422);
    expect(refusedFile.parse(await answer.json()).faults).toMatchObject([{ line: 2, column: 'value_mm' }]);
  });

  it('refuses what is no CSV, what is too large, and what was cut off', async () => {
    const other = call('/api/v1/measurements', token, { body: text, type: 'application/json' });
    expect((await postMeasurements(other)).status).toBe(415);
    const large = call('/api/v1/measurements', token, { body: text });
    large.headers.set('content-length', String(MAX_FILE_BYTES + 1));
    expect((await postMeasurements(large)).status).toBe(413);
    const short = call('/api/v1/measurements', token, { body: text });
    short.headers.set('content-length', String(Buffer.byteLength(text) + 1));
    const cut = await postMeasurements(short);
    expect(cut.status).toBe(400);
    expect((await fields(cut)).detail).toMatch(/was cut off/);
    expect((await send(text, '?dry_run=maybe')).status).toBe(400);
    expect(await database().reading.count()).toBe(0);
    expect(readdirSync(staging)).toEqual([]);
  });
});

describe('fetching', () => {
  beforeEach(async () => {
    await saveReadings(store.shop, readings, fileNamed('regular'), actor);
  });

  it('measurements gives a file that reads as what was stored, filtered as the jobs are', async () => {
    const all = await getMeasurements(call('/api/v1/measurements', token));
    const back = await readMeasurementFile(await all.text());
    expect(back.faults).toEqual([]);
    expect(back.readings).toHaveLength(64);
    const one = await getMeasurements(call('/api/v1/measurements?job=J000001', token));
    expect((await readMeasurementFile(await one.text())).summary.jobs).toBe(1);
    const refused = await getMeasurements(call('/api/v1/measurements?stage=during', token));
    expect(refused.status).toBe(400);
    expect((await fields(refused)).detail).toMatch(/“during” is not understood as stage/);
  });

  it('the report says to come later while there are no figures', async () => {
    const answer = await getReport(call('/api/v1/report', token));
    expect(answer.status).toBe(503);
    expect(answer.headers.get('retry-after')).toBe('30');
  });

  it('the report is the one that the command prints, by the same contract', async () => {
    await refresh(store.shop, 'test');
    const answer = await getReport(call('/api/v1/report', token));
    expect(answer.status).toBe(200);
    const body: unknown = await answer.json();
    const report = reportSchema.strict().parse(body);
    const printed = JSON.parse(
      [...batchReportText(assessShop(await loadJobs(store.shop)))].join(''),
    ) as typeof report;
    expect(report.first_time_right).toEqual(printed.first_time_right);
    expect(report.heights).toEqual(printed.heights);
    expect(report.rounds.map(({ next_check: _, ...round }) => round)).toEqual(
      printed.rounds.map(({ next_check: _, ...round }) => round),
    );
  });

  it('a job shows its rounds with their verdicts, and null before there are any', async () => {
    const before = jobSchema.parse(await (await jobNamed('J000000')).json());
    expect(before.rounds.map(({ verdict }) => verdict)).toEqual([null, null]);
    await refresh(store.shop, 'test');
    const after = jobSchema.parse(await (await jobNamed('J000000')).json());
    expect(after.rounds.map(({ verdict }) => verdict?.heights.length)).toEqual([8, 8]);
    expect(after.rounds[0]?.setups).toHaveLength(4);
    expect((await jobNamed('absent')).status).toBe(404);
  });

  it('scheduled reports are listed, and told apart: done, being made, failed', async () => {
    const due = Date.UTC(2026, 5, 1);
    const [done, failed, making] = [
      await claimReport(store.shop, due),
      await claimReport(store.shop, due + 1),
      await claimReport(store.shop, due + 2),
    ] as [number, number, number];
    await keepReport(store.shop, done, { rounds: [] });
    await failReport(store.shop, failed, 'There were no figures yet.');
    const { reports } = await fields(await listScheduled(call('/api/v1/reports', token)));
    expect(reports).toMatchObject(
      [{ id: making }, { id: failed, failed: /no figures/ }, { id: done }].map(({ id }) => ({ id })),
    );
    expect(await fields(await reportOf(done))).toEqual({ rounds: [] });
    expect((await fields(await reportOf(failed))).detail).toBe('There were no figures yet.');
    expect((await reportOf(making)).status).toBe(503);
  });
});

describe('a token of another shop', () => {
  it('reaches nothing of this one and changes nothing in it', async () => {
    await saveReadings(store.shop, readings, fileNamed('regular'), actor);
    await refresh(store.shop, 'test');
    const due = (await claimReport(store.shop, Date.UTC(2026, 5, 1))) ?? 0;
    await keepReport(store.shop, due, { rounds: [] });
    const other = await database().shop.create({ data: { name: 'Another shop', timeZone: 'UTC' } });
    const theirs = await tokenFor(other.id, ...TOKEN_SCOPES);

    expect((await jobNamed('J000000', theirs)).status).toBe(404);
    expect((await reportOf(due, theirs)).status).toBe(404);
    expect((await fields(await listScheduled(call('/api/v1/reports', theirs)))).reports).toEqual([]);
    expect((await getReport(call('/api/v1/report', theirs))).status).toBe(503);
    for (const query of ['', '?job=J000000', '?technician=T0', `?shop=${store.shop}`]) {
      const file = await getMeasurements(call(`/api/v1/measurements${query}`, theirs));
      expect((await file.text()).trimEnd().split('\r\n')).toHaveLength(1);
    }
    const metrics = await (await getMetrics(call('/metrics', theirs))).text();
    expect(metrics).toContain('rehang_readings_total 0\n');

    const before = await database().reading.count();
    expect((await send(text, '', theirs)).status).toBe(201);
    expect(await database().reading.count()).toBe(2 * before);
    expect(await database().job.count({ where: { shopId: store.shop } })).toBe(2);
  });
});

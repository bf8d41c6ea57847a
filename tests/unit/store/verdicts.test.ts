import { beforeEach, describe, expect, it } from 'vitest';
import {
  currentFit,
  heightsFor,
  recordOutcome,
  roundsWithoutVerdict,
  saveFit,
  saveReadings,
  saveRoundVerdicts,
  verdictsFor,
  listRecheckOutcomes,
  loadJobs,
  inputsVersion,
  type HeightRecord,
} from '@/lib/store';
import { freshStore } from './fresh-store';
import { BY_COMMAND, fileNamed, regularShop } from './invented-readings';

const store = freshStore();

const height = (gauge: number, change: Partial<HeightRecord> = {}): HeightRecord => ({
  setup: 'before-0',
  point: 'A',
  side: 'L',
  zero: false,
  deviation: 4,
  p: { neither: 1 - gauge, gauge, body: 0, both: 0 },
  misset: 4 * gauge,
  body: 0,
  signature: null,
  ...change,
});

const verdict = (job: string, heights: HeightRecord[], stage: 'before' | 'after' = 'before') => ({
  job,
  stage,
  attempt: 1,
  decidable: true,
  why: null,
  pZeroMisset: 0.02,
  heights,
  document: { job, heights: heights.length },
  version: 1,
});

const fit = () => saveFit(store.shop, { inputsVersion: 1, parameters: { sd: 0.5 }, figures: [1, null] });

beforeEach(async () => {
  await saveReadings(store.shop, regularShop(3), fileNamed('three.csv'), BY_COMMAND);
});

describe('a fit', () => {
  it('is the newest that was kept, with the version of its inputs', async () => {
    expect(await currentFit(store.shop)).toBeNull();
    await fit();
    const newest = await saveFit(store.shop, { inputsVersion: 2, parameters: null, figures: { shop: 'x' } });
    expect(await currentFit(store.shop)).toEqual(newest);
    expect(newest).toMatchObject({ inputsVersion: 2, parameters: null, figures: { shop: 'x' } });
  });

  it('stays as long as a verdict names it', async () => {
    const first = await fit();
    await saveRoundVerdicts(store.shop, first.id, [verdict('J000000', [])]);
    for (let count = 0; count < 8; count++) await fit();
    expect((await verdictsFor(store.shop, {}))[0]?.fit).toBe(first.id);
  });
});

describe('verdicts', () => {
  it('are waited for by every round: new, changed, or judged by another fit', async () => {
    const { id } = await fit();
    expect(await roundsWithoutVerdict(store.shop, id)).toHaveLength(6);
    await saveRoundVerdicts(store.shop, id, [verdict('J000000', [height(0.9)]), verdict('J000001', [])]);
    expect(await roundsWithoutVerdict(store.shop, id)).toHaveLength(4);
    await recordOutcome(
      store.shop,
      {
        job: 'J000000',
        setup: 'before-0',
        side: 'L',
        cause: 'gauge',
        note: null,
      },
      { person: 'T0', via: 'page' },
    );
    expect(await roundsWithoutVerdict(store.shop, id)).toContainEqual({
      job: 'J000000',
      stage: 'before',
      attempt: 1,
      version: 2,
    });
    expect(await roundsWithoutVerdict(store.shop, (await fit()).id)).toHaveLength(6);
  });

  it('come back as they were kept, newest round first', async () => {
    const { id } = await fit();
    await saveRoundVerdicts(store.shop, id, [
      verdict('J000000', [height(0.9)]),
      verdict('J000002', [height(0.2)]),
      { ...verdict('J000001', []), decidable: false, why: 'The center section is out.' },
    ]);
    const found = await verdictsFor(store.shop, {});
    expect(found.map((one) => one.job)).toEqual(['J000002', 'J000001', 'J000000']);
    expect(found[1]).toMatchObject({
      decidable: false,
      why: 'The center section is out.',
      pZeroMisset: 0.02,
    });
    expect(found[2]?.document).toEqual({ job: 'J000000', heights: 1 });
  });

  it('are chosen by job, hands, time, doubt and being the last of a job', async () => {
    const { id } = await fit();
    await saveRoundVerdicts(store.shop, id, [
      verdict('J000000', [height(0.9)]),
      verdict('J000001', [height(0.2)]),
      verdict('J000001', [height(0.3, { setup: 'after-0' })], 'after'),
    ]);
    const jobs = (filter: Parameters<typeof verdictsFor>[1]) =>
      verdictsFor(store.shop, filter).then((found) => found.map((one) => `${one.job} ${one.stage}`));
    expect(await jobs({ minGauge: 0.8 })).toEqual(['J000000 before']);
    expect(await jobs({ last: true })).toEqual(['J000001 after']);
    expect(await jobs({ technician: 'T1' })).toEqual(['J000001 after', 'J000001 before']);
    expect(await jobs({ gauge: 'C0', job: 'J000000' })).toEqual(['J000000 before']);
    expect(await jobs({ decidable: false })).toEqual([]);
    expect(await jobs({ limit: 1 })).toEqual(['J000001 after']);
    expect(await jobs({ from: Date.UTC(2027, 0, 1) })).toEqual([]);
  });

  it('take the place of earlier ones, heights included', async () => {
    const { id } = await fit();
    await saveRoundVerdicts(store.shop, id, [verdict('J000000', [height(0.9), height(0.9, { side: 'R' })])]);
    await saveRoundVerdicts(store.shop, id, [verdict('J000000', [height(0.4)])]);
    const heights = await heightsFor(store.shop, {});
    expect(heights).toHaveLength(1);
    expect(heights[0]).toMatchObject({
      job: 'J000000',
      setup: 'before-0',
      technician: 'T0',
      gauge: 'C0',
      point: 'A',
      side: 'L',
      p: { neither: 0.6, gauge: 0.4, body: 0, both: 0 },
      cause: null,
    });
    expect(await heightsFor(store.shop, { minGauge: 0.5 })).toEqual([]);
    expect(await heightsFor(store.shop, { technician: 'T2' })).toEqual([]);
  });

  it('whose probabilities do not sum to one are refused', async () => {
    const { id } = await fit();
    const wrong = height(0.9, { p: { neither: 0.9, gauge: 0.9, body: 0, both: 0 } });
    await expect(saveRoundVerdicts(store.shop, id, [verdict('J000000', [wrong])])).rejects.toThrow(
      /check constraint/i,
    );
    expect(await verdictsFor(store.shop, {})).toEqual([]);
  });
});

describe('what a re-check showed', () => {
  const showed = { job: 'J000001', setup: 'before-0', side: 'L', note: 'hung again' } as const;
  const actor = { person: 'T1', via: 'page' } as const;

  it('counts for that side of the setup; the last one counts, all stay on record', async () => {
    const version = await inputsVersion(store.shop);
    await recordOutcome(store.shop, { ...showed, cause: 'body', at: 1000 }, actor);
    await recordOutcome(store.shop, { ...showed, cause: 'gauge', at: 2000 }, actor);
    const [job] = await loadJobs(store.shop, { jobs: ['J000001'] });
    const observations = job?.rounds[0]?.setups[0]?.observations ?? [];
    expect(observations.map(({ side, cause }) => [side, cause])).toEqual([
      ['L', 'gauge'],
      ['R', null],
    ]);
    expect(await listRecheckOutcomes(store.shop, { job: 'J000001' })).toEqual([
      { ...showed, cause: 'gauge', by: 'T1', at: 2000 },
      { ...showed, cause: 'body', by: 'T1', at: 1000 },
    ]);
    expect(await inputsVersion(store.shop)).toBe(version + 2);
  });

  it('is refused in words for what the shop does not have', async () => {
    const record = (change: Partial<Parameters<typeof recordOutcome>[1]>, person = 'T1') =>
      recordOutcome(store.shop, { ...showed, cause: 'body', ...change }, { ...actor, person });
    await expect(record({ setup: 'none' })).rejects.toThrow(/Job J000001 has no setup none/);
    await expect(record({}, 'X')).rejects.toThrow(/nobody with the code X/);
    await expect(record({ side: null })).rejects.toThrow(/no reading/);
    expect(await listRecheckOutcomes(store.shop)).toEqual([]);
  });
});

import { describe, expect, it } from 'vitest';
import { collapse, type Reading } from '@/lib/measure';
import {
  getGauge,
  getJobRow,
  getSheet,
  inputsVersion,
  listJobs,
  listLoadedFiles,
  listPeople,
  listRecheckOutcomes,
  loadJobs,
  readingsFor,
  saveReadings,
  sheetBook,
  StoreConflict,
} from '@/lib/store';
import { freshStore } from './fresh-store';
import { BY_COMMAND, fileNamed, lines, reading, regularShop } from './invented-readings';

const store = freshStore();
const save = (readings: readonly Reading[], name = 'first.csv') =>
  saveReadings(store.shop, readings, fileNamed(name, readings.length + 1), BY_COMMAND);

async function conflictsOf(readings: readonly Reading[]) {
  const refused = await save(readings, 'second.csv').then(
    () => null,
    (error: unknown) => error,
  );
  if (!(refused instanceof StoreConflict)) throw new Error('The readings were not refused.');
  return refused.conflicts;
}

async function stored(): Promise<Reading[]> {
  const readings: Reading[] = [];
  for await (const one of readingsFor(store.shop)) readings.push(one);
  return readings;
}

describe('saveReadings', () => {
  it('stores every reading, and gives each back as it was', async () => {
    const readings = regularShop(3);
    const summary = await save(readings);
    expect(summary).toMatchObject({
      added: readings.length,
      alreadyThere: 0,
      newJobs: 3,
      newSetups: 24,
      newSheets: 3,
    });
    expect(summary.newPeople).toEqual(['T0', 'T1', 'T2']);
    expect(summary.newGauges).toEqual(['C0', 'C1', 'C2', 'C3']);
    expect((await stored()).sort((a, b) => a.line - b.line)).toEqual(readings);
  });

  it('keeps the collapsed form that the readings collapse to', async () => {
    const readings = regularShop(4);
    await save(readings);
    expect(await loadJobs(store.shop)).toEqual(collapse(readings));
  });

  it('adds nothing when the same file comes twice', async () => {
    const readings = regularShop(2);
    await save(readings);
    const [jobs, version] = [await loadJobs(store.shop), await inputsVersion(store.shop)];
    const again = await save(readings);
    expect(again).toMatchObject({
      added: 0,
      alreadyThere: readings.length,
      jobs: [],
      newJobs: 0,
      newPeople: [],
    });
    expect(await loadJobs(store.shop)).toEqual(jobs);
    expect(await inputsVersion(store.shop)).toBe(version);
    expect(await listLoadedFiles(store.shop)).toHaveLength(1);
  });

  it('takes further readings of a known setup into its collapsed form', async () => {
    const [first, second] = lines([{ value: 351 }, { repeat: 2, value: 353 }]) as [Reading, Reading];
    await save([first]);
    expect(await save([first, second], 'more.csv')).toMatchObject({
      added: 1,
      alreadyThere: 1,
      newSetups: 0,
    });
    expect(await loadJobs(store.shop)).toEqual(collapse([first, second]));
  });

  it('takes new setups and rounds of a known job', async () => {
    const before = reading();
    const again = reading({ setup: 'B1-02', takenAt: before.takenAt + 60_000, value: 350 });
    const after = reading({
      setup: 'A1-01',
      stage: 'after',
      takenAt: before.takenAt + 86_400_000,
      value: 350.2,
    });
    await save([before]);
    expect(await save([again, after], 'more.csv')).toMatchObject({ newJobs: 0, newSetups: 2, jobs: ['J1'] });
    expect(await loadJobs(store.shop)).toEqual(collapse([before, again, after]));
    expect(await getJobRow(store.shop, 'J1')).toMatchObject({
      stage: 'after',
      attempt: 1,
      rounds: 2,
      setups: 3,
      readings: 3,
      openedAt: before.takenAt,
      lastReadAt: after.takenAt,
    });
  });

  it('moves a setup forward in time when an earlier reading of it comes later', async () => {
    const late = reading({ repeat: 2, takenAt: Date.UTC(2026, 2, 2, 9) });
    const early = reading({ repeat: 1, takenAt: Date.UTC(2026, 2, 2, 8) });
    await save([late]);
    await save([early], 'earlier.csv');
    expect(await loadJobs(store.shop)).toEqual(collapse([early, late]));
    expect((await getJobRow(store.shop, 'J1'))?.openedAt).toBe(early.takenAt);
  });

  it('says with every change that a fit is out of date', async () => {
    const before = await inputsVersion(store.shop);
    await save([reading()]);
    expect(await inputsVersion(store.shop)).toBe(before + 1);
  });

  it('keeps a job that was measured without a sheet apart from every sheet', async () => {
    await save([reading({ sheet: null }), reading({ job: 'J2', sheet: null, nominal: 260 })]);
    expect((await loadJobs(store.shop)).map((job) => job.sheet)).toEqual([null, null]);
    expect(await sheetBook(store.shop)).toEqual(new Map());
    expect((await listJobs(store.shop, {})).total).toBe(2);
  });

  it('takes a line without a sheet for the sheet of its job', async () => {
    await save([reading()]);
    const more = reading({ sheet: null, repeat: 2 });
    expect(await save([more], 'more.csv')).toMatchObject({ added: 1 });
    expect((await loadJobs(store.shop))[0]?.sheet).toBe('S1');
  });

  it('learns what an earlier file left open: the section, the gauge kind', async () => {
    await save([reading({ section: null, gaugeKind: null })]);
    await save([reading({ repeat: 2 })], 'more.csv');
    expect((await getSheet(store.shop, 'S1'))?.dimensions[0]?.section).toBe('front');
    expect((await getGauge(store.shop, 'C1'))?.kind).toBe('centering');
  });

  it('makes technicians of the codes that it meets first', async () => {
    await save([reading({ technician: 'T9' })]);
    expect(await listPeople(store.shop)).toEqual([
      { code: 'T9', name: 'T9', role: 'technician', active: true },
    ]);
  });
});

describe('causes', () => {
  it('are kept, and told once for each side of a setup', async () => {
    const readings = lines([{ cause: 'gauge' }, { cause: 'gauge', repeat: 2 }, { side: 'R', cause: null }]);
    expect(await save(readings)).toMatchObject({ causes: 1 });
    expect(await listRecheckOutcomes(store.shop)).toMatchObject([
      { job: 'J1', setup: 'B1-01', side: 'L', cause: 'gauge' },
    ]);
    expect(await save(readings)).toMatchObject({ causes: 0, added: 0 });
  });

  it('may be filled in by a later copy of the file', async () => {
    await save([reading()]);
    expect(await save([reading({ cause: 'body' })], 'filled in.csv')).toMatchObject({
      added: 0,
      causes: 1,
      jobs: ['J1'],
    });
    expect((await loadJobs(store.shop))[0]?.rounds[0]?.setups[0]?.observations[0]?.cause).toBe('body');
    expect(await save([reading()], 'empty again.csv')).toMatchObject({ added: 0, causes: 0, jobs: [] });
  });

  it('that contradict each other are refused', async () => {
    await save([reading({ cause: 'body' })]);
    expect(await conflictsOf([reading({ cause: 'gauge' })])).toMatchObject([{ line: 2, column: 'cause' }]);
  });
});

describe('a contradiction', () => {
  const contradictions: [string, Partial<Reading>][] = [
    ['value_mm', { value: 352 }],
    ['taken_at', { takenAt: Date.UTC(2026, 2, 3) }],
    ['nominal_mm', { nominal: 251, setup: 'B1-02' }],
    ['tolerance_mm', { tolerance: 2, setup: 'B1-02' }],
    ['station_mm', { station: 301, setup: 'B1-02' }],
    ['zero', { zero: true, setup: 'B1-02' }],
    ['section', { section: 'rear', setup: 'B1-02' }],
    ['sheet', { sheet: 'S2' }],
    ['technician', { technician: 'T2', repeat: 2 }],
    ['gauge', { gauge: 'C2', repeat: 2 }],
    ['gauge_kind', { gaugeKind: 'tram', repeat: 2 }],
    ['clearance_mm', { clearance: 50, setup: 'B1-02' }],
    ['setup', { stage: 'after', repeat: 2 }],
  ];

  it.each(contradictions)(
    'in %s is refused by its line, and nothing of its file is stored',
    async (column, change) => {
      await save([reading()]);
      const before = await stored();
      const conflicts = await conflictsOf([
        reading({ line: 2, job: 'J7', technician: 'T7', gauge: 'C7', sheet: 'S7' }),
        reading({ line: 3, ...change }),
      ]);
      expect(conflicts).toHaveLength(1);
      expect(conflicts[0]).toMatchObject({ line: 3, column });
      expect(conflicts[0]?.reason).toMatch(/this line says/);
      expect(await stored()).toEqual(before);
      expect((await listPeople(store.shop)).map((person) => person.code)).toEqual(['T1']);
      expect(await sheetBook(store.shop)).toHaveProperty('size', 1);
    },
  );

  it('within one batch is refused as well', async () => {
    const conflicts = await conflictsOf(lines([{}, { value: 360 }, { job: 'J2', nominal: 240 }]));
    expect(conflicts.map(({ line, column }) => [line, column])).toEqual([
      [3, 'value_mm'],
      [4, 'nominal_mm'],
    ]);
  });

  it('is told with its line by the error itself', async () => {
    await save([reading()]);
    await expect(save([reading({ line: 9, value: 300 })], 'second.csv')).rejects.toThrow(
      /^Line 9, column value_mm: .*351 mm.*300.*Nothing was stored\.$/,
    );
  });
});

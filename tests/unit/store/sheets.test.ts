import { beforeEach, describe, expect, it } from 'vitest';
import { collapse, type Reading } from '@/lib/measure';
import { expandRows, rowsOf, type PointRow, type SheetContent, type SheetRows } from '@/lib/measure/sheet';
import {
  copySheet,
  correctSheet,
  createSheet,
  getSheet,
  inputsVersion,
  jobsWithoutOutcome,
  listSheets,
  listTrace,
  loadJobs,
  openSheet,
  retireSheet,
  roundsWithoutVerdict,
  savePeople,
  saveReadings,
  sheetHistory,
  verdictsFor,
} from '@/lib/store';
import { database } from '@/lib/store/connection/database';
import { broughtUpToDate } from './brought-up-to-date';
import { freshStore, statement } from './fresh-store';
import { BY_COMMAND, fileNamed, lines, regularShop } from './invented-readings';

const store = freshStore();
const ACTOR = { person: 'T0', via: 'page' } as const;
/** Jobs J000000 and J000005 are measured by sheet S0, where height B is 210 and a zero station. */
const SHOP = regularShop(6).filter(({ job }) => /[015]$/.test(job));
const REASON = 'the maker’s sheet says so';

/** The sheet with one point changed, as somebody would enter it. */
async function changed(letter: string, change: Partial<PointRow>, name = 'S0') {
  const record = await openSheet(store.shop, name);
  if (record === null) throw new Error(`no ${name}`);
  const { points, lengths } = rowsOf(record);
  const rows = points.map((row) => (row.letter === letter ? { ...row, ...change } : row));
  return { revision: record.revision, reason: REASON, ...expandRows({ points: rows, lengths }) };
}
const correct = async (letter: string, change: Partial<PointRow>) =>
  correctSheet(store.shop, 'S0', await changed(letter, change), ACTOR);

const observations = (shop: number) =>
  database().observation.findMany({
    where: { setup: { shopId: shop } },
    select: { n: true, mean: true, deviation: true, ss: true },
    orderBy: [{ setupId: 'asc' }, { dimensionId: 'asc' }],
  });

const ROWS: SheetRows = {
  points: [1000, 2500].map((station, index) => ({
    ...{ letter: 'KN'.charAt(index), side: 'both', description: null, feature: 'hole', section: 'center' },
    ...{ station, height: 240, halfWidth: 400, zero: true, tolerance: 3, centerline: null },
  })),
  lengths: [{ from: 'K', to: 'N', kind: 'straight', nominal: 1500, tolerance: 3 }],
};
const entered = (change: Partial<SheetRows> = {}): SheetContent => expandRows({ ...ROWS, ...change });
const enter = (name: string, content = entered()) =>
  createSheet(store.shop, { name, ...content }, 'entered', ACTOR);

const load = () => saveReadings(store.shop, SHOP, fileNamed('three.csv'), BY_COMMAND);

describe('a sheet that is entered', () => {
  beforeEach(async () => {
    await savePeople(store.shop, [{ code: 'T0', name: '', role: 'trainer', active: true }], BY_COMMAND);
  });

  it('is kept with its first revision, can be copied under another name, and stands in the trace', async () => {
    await enter('Hatch');
    await copySheet(store.shop, 'Hatch', 'Hatch, long', ACTOR);
    expect(rowsOf((await getSheet(store.shop, 'Hatch, long')) ?? entered())).toEqual(ROWS);
    expect(await sheetHistory(store.shop, 'Hatch')).toMatchObject([
      { revision: 1, by: 'T0', reason: null, origin: 'entered', content: entered() },
    ]);
    expect(await sheetHistory(store.shop, 'Hatch, long')).toMatchObject([
      { revision: 1, origin: 'copied', copiedFrom: 'Hatch' },
    ]);
    const { rows } = await listTrace(store.shop, { kind: 'sheet' });
    expect(rows.map(({ action, subject, by }) => [action, subject, by])).toEqual([
      ['copied', 'sheet Hatch, long', 'T0'],
      ['added', 'sheet Hatch', 'T0'],
    ]);
  });

  it('is refused in words where the name is taken or none, it has faults, or nobody enters it', async () => {
    await enter('Hatch');
    await expect(enter('Hatch')).rejects.toThrow('There is a sheet Hatch already.');
    await expect(enter('  ')).rejects.toThrow(/a name of 1 to 80/);
    await expect(enter('X', entered({ points: ROWS.points.slice(0, 1) }))).rejects.toThrow(/has faults/);
    await expect(copySheet(store.shop, 'None', 'X', ACTOR)).rejects.toThrow('The shop has no sheet None.');
    const sheet = { name: 'X', ...entered() };
    await expect(createSheet(store.shop, sheet, 'entered', BY_COMMAND)).rejects.toThrow(/Say who/);
    expect((await listSheets(store.shop)).map(({ name }) => name)).not.toContain('X');
  });

  it('can be retired and taken back', async () => {
    await load();
    await retireSheet(store.shop, 'S0', true, ACTOR);
    const retired = async () => (await listSheets(store.shop)).filter((one) => one.retiredAt !== null);
    expect(await retired()).toMatchObject([{ name: 'S0', jobs: 2 }]);
    await expect(retireSheet(store.shop, 'S0', true, ACTOR)).rejects.toThrow(/retired already/);
    await retireSheet(store.shop, 'S0', false, ACTOR);
    expect(await retired()).toEqual([]);
  });
});

describe('a corrected sheet', () => {
  beforeEach(async () => {
    await load();
  });

  it('has every deviation worked out as if a file had said so, to the last bit', async () => {
    const told = await correct('B', { height: 211.7, tolerance: 2.5 });
    expect(told).toMatchObject({ revision: 2, observations: 8, rounds: 4, jobs: 2 });
    const said = SHOP.map((one): Reading =>
      one.sheet === 'S0' && one.point === 'B' ? { ...one, nominal: 211.7, tolerance: 2.5 } : one,
    );
    expect(await loadJobs(store.shop)).toEqual(collapse(said));
    const other = await database().shop.create({ data: { name: 'another', timeZone: 'UTC' } });
    await saveReadings(other.id, said, fileNamed('said'), BY_COMMAND);
    expect(await observations(store.shop)).toEqual(await observations(other.id));
    // A file with the old value contradicts the sheet by now; one with the new value is there already.
    await expect(saveReadings(store.shop, SHOP, fileNamed('again'), BY_COMMAND)).rejects.toThrow(/211\.7/);
    expect(await saveReadings(store.shop, said, fileNamed('new'), BY_COMMAND)).toMatchObject({ added: 0 });
  });

  it('puts figures, verdicts and outcomes of its jobs out of date, and of no other job', async () => {
    await broughtUpToDate(store.shop);
    const fit = (await verdictsFor(store.shop, {}))[0]?.fit ?? 0;
    const version = await inputsVersion(store.shop);
    await correct('B', { height: 212 });
    expect(await inputsVersion(store.shop)).toBe(version + 1);
    const waiting = await roundsWithoutVerdict(store.shop, fit);
    expect(waiting.map(({ job, stage }) => `${job} ${stage}`).sort()).toEqual([
      ...['J000000 after', 'J000000 before', 'J000005 after', 'J000005 before'],
    ]);
    expect((await jobsWithoutOutcome(store.shop)).map(({ job }) => job).sort()).toEqual([
      ...['J000000', 'J000005'],
    ]);
  });

  it('leaves figures alone where only a description or half width is corrected', async () => {
    const version = await inputsVersion(store.shop);
    const told = await correct('B', { description: 'floor rail, slot', halfWidth: 412 });
    expect(told).toMatchObject({ observations: 0, rounds: 0, jobs: 0 });
    expect(await inputsVersion(store.shop)).toBe(version);
  });

  it('keeps every state whole, with who, when and why; what files brought stands before the first one', async () => {
    await correct('B', { height: 212 });
    const added = SHOP.filter(({ job, point }) => job === 'J000005' && point === 'A').map(
      (one, index): Reading => ({ ...one, setup: `x${index}`, point: 'E', station: 3500, line: index + 2 }),
    );
    await saveReadings(store.shop, added, fileNamed('another point'), BY_COMMAND);
    expect(await correct('C', { height: 221 })).toMatchObject({ revision: 4 });
    const history = await sheetHistory(store.shop, 'S0');
    expect(history.map(({ revision, origin, reason, by }) => [revision, origin, reason, by])).toEqual([
      [1, 'found', null, 'T0'],
      [2, 'corrected', REASON, 'T0'],
      [3, 'found', null, 'T0'],
      [4, 'corrected', REASON, 'T0'],
    ]);
    const letters = history.map(({ content }) => new Set(content.dimensions.map(({ point }) => point)).size);
    expect(letters).toEqual([4, 4, 5, 5]);
    await expect(statement('UPDATE "SheetRevision" SET "reason" = NULL')).rejects.toThrow();
    const { rows } = await listTrace(store.shop, { kind: 'sheet' });
    expect(rows.at(-1)).toMatchObject({
      ...{ action: 'corrected', by: 'T0', reason: REASON, subject: 'sheet S0' },
      before: { 'height B L nominal': 210, 'height B R nominal': 210 },
      after: { 'height B L nominal': 212, 'height B R nominal': 212 },
    });
  });

  it('keeps a straight length and its diagonal apart when one takes the value of the other', async () => {
    const length = { sheet: 'S0', job: 'J000000', quantity: 'length', point: 'B-C', side: null } as const;
    const two = lines([
      { ...length, setup: 's', gauge: 'T', gaugeKind: 'tram', nominal: 700, value: 701, station: null },
      { ...length, setup: 's', gauge: 'T', gaugeKind: 'tram', nominal: 1000, value: 1003, station: null },
    ]).map((one) => ({ ...one, technician: 'T1' }));
    await saveReadings(store.shop, two, fileNamed('two'), BY_COMMAND);
    const record = await openSheet(store.shop, 'S0');
    const rows = rowsOf(record ?? entered());
    const nominals = new Map([
      [700, 1000],
      [1000, 1300],
    ]);
    const lengths = rows.lengths.map((one) => ({ ...one, nominal: nominals.get(one.nominal) ?? 0 }));
    const content = expandRows({ ...rows, lengths });
    await correctSheet(store.shop, 'S0', { revision: 1, reason: REASON, ...content }, ACTOR);
    const [job] = await loadJobs(store.shop, { jobs: ['J000000'] });
    const found = job?.rounds.flatMap(({ setups }) => setups.flatMap((setup) => setup.observations));
    expect(
      found
        ?.filter(({ quantity }) => quantity === 'length')
        .map(({ nominal, deviation }) => [nominal, deviation]),
    ).toEqual([
      [1000, -299],
      [1300, -297],
    ]);
  });

  it('loses no dimension that was read; one that was not can be taken out', async () => {
    const without = async (letter: string) => {
      const { points, dimensions, ...rest } = await changed('', {});
      return {
        ...rest,
        points: points.filter((one) => one.letter !== letter),
        dimensions: dimensions.filter(({ point }) => point !== letter),
      };
    };
    await expect(correctSheet(store.shop, 'S0', await without('A'), ACTOR)).rejects.toThrow(
      /Height A L has been read \(4 times set and read\): it cannot be taken out/,
    );
    const extra = await changed('', {});
    const point = { ...ROWS.points[0], letter: 'X', zero: false, section: 'rear', station: 2100 } as PointRow;
    const more = expandRows({ points: [point], lengths: [] });
    const content = {
      points: [...extra.points, ...more.points],
      dimensions: [...extra.dimensions, ...more.dimensions],
    };
    await correctSheet(store.shop, 'S0', { revision: 1, reason: REASON, ...content }, ACTOR);
    expect((await openSheet(store.shop, 'S0'))?.read).toHaveLength(8);
    await correctSheet(store.shop, 'S0', await without('X'), ACTOR);
    expect((await getSheet(store.shop, 'S0'))?.dimensions).toHaveLength(8);
  });

  it('is refused in words where it cannot be', async () => {
    const present = await changed('B', { height: 212 });
    const at = (change: object) => correctSheet(store.shop, 'S0', { ...present, ...change }, ACTOR);
    await expect(at({ reason: ' ' })).rejects.toThrow(/Say why/);
    await expect(at({ revision: 3 })).rejects.toThrow(/was corrected meanwhile: it stands at revision 1/);
    await expect(at(await changed('B', {}))).rejects.toThrow('Sheet S0 stands so already.');
    await expect(at(await changed('B', { tolerance: 0 }))).rejects.toThrow(/has faults/);
    await expect(correctSheet(store.shop, 'None', present, ACTOR)).rejects.toThrow(/no sheet None/);
    await expect(correctSheet(store.shop, 'S0', present, { ...ACTOR, person: null })).rejects.toThrow(
      /Say who/,
    );
    expect(await sheetHistory(store.shop, 'S0')).toEqual([]);
  });
});

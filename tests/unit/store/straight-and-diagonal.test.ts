import { describe, expect, it } from 'vitest';
import { collapse, type Reading } from '@/lib/measure';
import {
  getSheet,
  loadJobs,
  readingsFor,
  saveReadings,
  saveSheet,
  sheetBook,
  StoreConflict,
} from '@/lib/store';
import { freshStore } from './fresh-store';
import { BY_COMMAND, fileNamed, lines } from './invented-readings';

const store = freshStore();
const save = (readings: readonly Reading[], name = 'first.csv') =>
  saveReadings(store.shop, readings, fileNamed(name), BY_COMMAND);

const LENGTH = {
  quantity: 'length',
  side: null,
  station: null,
  clearance: 0,
  gauge: 'M1',
  gaugeKind: 'tram',
} as const;
const straight = { ...LENGTH, setup: 'B1-03', point: 'B-C', nominal: 1452, value: 1453 };
const diagonal = { ...LENGTH, setup: 'B1-04', point: 'B-C', nominal: 1791, value: 1790 };
/** Both sides share the letters B and C, as their heights show. */
const heights = [
  { point: 'B', side: 'L' },
  { point: 'B', side: 'R' },
  { point: 'C', side: 'L', setup: 'B1-02' },
  { point: 'C', side: 'R', setup: 'B1-02' },
] as const;

async function conflictsOf(readings: readonly Reading[]) {
  const refused = await save(readings, 'second.csv').catch((error: unknown) => error);
  if (!(refused instanceof StoreConflict)) throw new Error('The readings were not refused.');
  return refused.conflicts;
}

describe('a straight length and its diagonal of one name', () => {
  const both = lines([...heights, straight, diagonal]);

  it('are two dimensions of the sheet, and come back as they were', async () => {
    await save(both);
    expect(await loadJobs(store.shop)).toEqual(collapse(both));
    const back: Reading[] = [];
    for await (const one of readingsFor(store.shop)) back.push(one);
    expect(back.sort((a, b) => a.line - b.line)).toEqual(both);
    const sheet = (await sheetBook(store.shop)).get('S1') ?? [];
    expect(sheet.filter(({ quantity }) => quantity === 'length').map(({ nominal }) => nominal)).toEqual([
      1452, 1791,
    ]);
  });

  it('may come in separate files', async () => {
    await save(lines([...heights, straight]));
    await save(lines([diagonal]), 'diagonal.csv');
    expect(await loadJobs(store.shop)).toEqual(collapse(both));
    expect(await save(both, 'both.csv')).toMatchObject({ added: 0, alreadyThere: both.length });
  });

  it('leave no room for a third value, on any line', async () => {
    await save(both);
    const third = { ...straight, setup: 'B1-05', nominal: 1462 };
    const conflicts = await conflictsOf(lines([third, { ...third, repeat: 2 }]));
    expect(conflicts.map(({ line, column }) => [line, column])).toEqual([
      [2, 'nominal_mm'],
      [3, 'nominal_mm'],
    ]);
    expect(conflicts[0]?.reason).toBe(
      'The sheet states the value of length B-C as 1452 mm or 1791 mm, this line says 1462 mm.',
    );
  });

  it('are entered with a sheet, and its second entry changes nothing', async () => {
    const dimensions = both.map(({ quantity, point, side, section, station, zero, nominal, tolerance }) => ({
      ...{ quantity, point, side, section, station, zero, nominal, tolerance },
    }));
    const sheet = { name: 'S2', dimensions, points: [] };
    await saveSheet(store.shop, sheet, BY_COMMAND);
    const kept = await getSheet(store.shop, 'S2');
    expect(kept?.dimensions).toHaveLength(6);
    await saveSheet(store.shop, sheet, BY_COMMAND);
    expect(await getSheet(store.shop, 'S2')).toEqual(kept);
    const third = dimensions
      .filter(({ nominal }) => nominal === 1452)
      .map((one) => ({ ...one, nominal: 1462 }));
    await expect(saveSheet(store.shop, { ...sheet, dimensions: third }, BY_COMMAND)).rejects.toThrow(
      'Sheet S2 states length B-C already, as 1452 or 1791 mm.',
    );
  });
});

describe('a length of one meaning', () => {
  it.each(['B.L-C.L', 'D-E'])('%s keeps its one sheet value', async (point) => {
    await save(lines([...heights, { ...straight, point }]));
    const conflicts = await conflictsOf(lines([{ ...diagonal, point }]));
    expect(conflicts).toMatchObject([{ line: 2, column: 'nominal_mm' }]);
    expect(await loadJobs(store.shop)).toEqual(collapse(lines([...heights, { ...straight, point }])));
  });
});

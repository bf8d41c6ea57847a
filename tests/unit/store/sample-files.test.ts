import { createHash } from 'node:crypto';
import { readdirSync, readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { assessShop } from '@/lib/assess';
import {
  collapse,
  readMeasurementFile,
  writeMeasurementFile,
  type KnownSheet,
  type Reading,
} from '@/lib/measure';
import { batchReportText } from '@/lib/reports';
import { knownSheets } from '@/lib/store/reader/known-sheets';
import { loadJobs, readingsFor, saveReadings, sheetBook } from '@/lib/store';
import { freshStore } from './fresh-store';
import { BY_COMMAND } from './invented-readings';

const FOLDER = 'tests/reference/samples';
const FAULTY = ['broken.csv'];
const good = readdirSync(FOLDER).filter((name) => name.endsWith('.csv') && !FAULTY.includes(name));

const store = freshStore();

async function read(
  source: string | Buffer,
  sheets: ReadonlyMap<string, KnownSheet> = new Map<string, KnownSheet>(),
) {
  const options = { timeZone: 'UTC', knownSheets: (sheet: string) => sheets.get(sheet) };
  const { readings, faults } = await readMeasurementFile(source, options);
  expect(faults).toEqual([]);
  return readings;
}

async function stored(): Promise<Reading[]> {
  const readings: Reading[] = [];
  for await (const one of readingsFor(store.shop)) readings.push(one);
  return readings;
}

describe('what the reader accepts can be stored', () => {
  it.each(good)('%s, which is given back so that its file reads the same', async (name) => {
    const bytes = readFileSync(`${FOLDER}/${name}`);
    const readings = await read(bytes);
    const file = { name, sha256: createHash('sha256').update(bytes).digest('hex'), lines: readings.length };
    expect(await saveReadings(store.shop, readings, file, BY_COMMAND)).toMatchObject({
      added: readings.length,
    });
    expect(await loadJobs(store.shop)).toEqual(collapse(readings));
    // The download, read by someone who has none of it and by the shop that has all of it.
    const download = writeMeasurementFile(await stored());
    expect(collapse(await read(download))).toEqual(collapse(readings));
    const again = await read(download, knownSheets(await sheetBook(store.shop)));
    expect(
      await saveReadings(store.shop, again, { ...file, sha256: 'f'.repeat(64) }, BY_COMMAND),
    ).toMatchObject({
      added: 0,
      alreadyThere: readings.length,
    });
  });

  it('messy-semicolon.csv among them, whose report is the same from the file and from the store', async () => {
    const name = 'messy-semicolon.csv';
    const readings = await read(readFileSync(`${FOLDER}/${name}`));
    await saveReadings(
      store.shop,
      readings,
      { name, sha256: '0'.repeat(64), lines: readings.length },
      BY_COMMAND,
    );
    const [fromFile, fromStore] = [collapse(readings), await loadJobs(store.shop)].map((jobs) =>
      [...batchReportText(assessShop(jobs))].join(''),
    );
    expect(fromStore).toBe(fromFile);
  });
});

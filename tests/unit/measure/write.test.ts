import { describe, expect, it } from 'vitest';
import { collapse, joinFiles, readMeasurementFile, writeMeasurementFile, type Reading } from '@/lib/measure';
import { after, file, height, length, ROUND } from './lines';
import { sample } from './sample';

const read = async (source: string | Buffer): Promise<Reading[]> => {
  const { readings, faults } = await readMeasurementFile(source);
  expect(faults).toEqual([]);
  return readings;
};

describe('a file written and read again', () => {
  it.each(['small.csv', 'messy-semicolon.csv', 'messy-tab.csv', 'hard.csv'])(
    '%s is the same',
    async (name) => {
      const readings = await read(sample(name));
      const again = await read(writeMeasurementFile(readings));
      expect(collapse(again)).toEqual(collapse(readings));
    },
  );

  it('a text that a spreadsheet would run as a formula is written as text', async () => {
    const label = `=HYPERLINK("x")`;
    const readings = (await read(after(length()))).map((r) => ({ ...r, technician: label, sheet: '-1+2' }));
    const text = writeMeasurementFile(readings);
    expect(text).toContain(`"'=HYPERLINK(""x"")"`);
    expect(text).not.toMatch(/(^|,)"?[=@+-](?!\d+(\.\d+)?(,|\r))/m);
    expect(await read(text)).toEqual(readings);
  });

  it('small and negative numbers keep all digits, without an exponent', async () => {
    const lines = [
      ...ROUND,
      height({ setup: '4', gauge: 'C4', point: 'D', station_mm: '-20.5', zero: 'no' }),
    ];
    const [first, ...rest] = await read(file(lines));
    if (first === undefined) throw new Error('No reading.');
    const readings = [...rest, { ...first, value: 1.25e-9 }];
    const text = writeMeasurementFile(readings);
    expect(text).toContain('0.00000000125');
    expect((await read(text)).map((r) => r.value)).toEqual(readings.map((r) => r.value));
  });

  it('lines end in CRLF, as RFC 4180 has it', () => {
    expect(writeMeasurementFile([])).toMatch(/^job,sheet,.*,cause\r\n$/);
  });
});

describe('several files as one shop', () => {
  it('a reading that is in two files counts once', async () => {
    const [one, both] = [await read(file(ROUND)), await read(after(length()))];
    const joined = joinFiles([
      { name: 'one.csv', readings: one },
      { name: 'both.csv', readings: both },
    ]);
    expect(joined).toMatchObject({ faults: [], repeated: 3 });
    expect(joined.readings).toHaveLength(4);
  });

  it('files that contradict each other are refused, with the file and the line', async () => {
    const one = { name: 'one.csv', readings: await read(after(height({ repeat: '2' }))) };
    const other = {
      name: 'other.csv',
      readings: await read(file(ROUND.map((line) => line.replace('J1', 'J2').replace(',200,', ',201,')))),
    };
    const { readings, faults } = joinFiles([one, other]);
    expect(readings).toEqual([]);
    // Point A has two readings that say 200 and one that says 201; B and C have one of each, so the first file stands.
    expect(faults.map(({ name, fault }) => [name, fault.line, fault.column])).toEqual([
      ['other.csv', 2, 'nominal_mm'],
      ['other.csv', 3, 'nominal_mm'],
      ['other.csv', 4, 'nominal_mm'],
    ]);
    expect(faults[0]?.fault.message).toContain('line 2 of one.csv');
  });
});

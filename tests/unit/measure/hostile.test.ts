import { describe, expect, it } from 'vitest';
import { readMeasurementFile, writeMeasurementFile } from '@/lib/measure';
import { textBytes } from '@/lib/measure/file/bytes';
import { MAX_BLANK_LINES, MAX_FILE_BYTES, MAX_LINE, MAX_LINES } from '@/lib/measure/file/limits';
import { after, file, height, length, ROUND } from './lines';

/** As long as a field can be. What looks at every character once is done at once; n² steps would be 10¹⁰ a field. */
const N = MAX_LINE - 1_000;

/** Texts that make a careless pattern try again from every place. */
const HOSTILE = {
  digits: `${'1'.repeat(N)}x`,
  'digits and points': `${'1.'.repeat(N / 2)}x`,
  'digits with an exponent': `${'1'.repeat(N)}e`,
  thousands: `1${'.000'.repeat(N / 4)}x`,
  signs: '+'.repeat(N),
  'a time with blanks': `2025-01-06T07:31:00${' '.repeat(N)}x`,
  letters: `${'a'.repeat(N)}!`,
  apostrophes: `${"'".repeat(N)}!`,
  quotes: `${'""'.repeat(N / 2)}!`,
  hyphens: `${'-'.repeat(N)}!`,
  'blanks within': `a${'\u00a0'.repeat(N)}a`,
};

const COLUMNS = [
  'value_mm',
  'taken_at',
  'stage',
  'quantity',
  'point',
  'job',
  'attempt',
  'gauge_kind',
] as const;
const refusal = (why: RegExp) => ({ fault: { message: expect.stringMatching(why) as string } });
const quoted = (text: string) => `"${text.replaceAll('"', '""')}"`;

describe('a field as long as a line may be', () => {
  it.each(Object.entries(HOSTILE))(
    'of %s is refused in a short sentence, in every column',
    async (_, text) => {
      for (const column of COLUMNS) {
        const { faults, readings } = await readMeasurementFile(after(length({ [column]: quoted(text) })));
        expect(readings).toEqual([]);
        expect(faults.length).toBeGreaterThan(0);
        for (const { message, value } of faults)
          expect(message.length + (value ?? '').length).toBeLessThan(700);
      }
    },
  );

  it.each(Object.entries(HOSTILE))('of %s as a column’s name is looked through once', async (_, text) => {
    const { faults } = await readMeasurementFile(`${quoted(text)},job\r\n1,2\r\n`);
    expect(faults.length).toBeGreaterThan(0);
  });
});

describe('a line', () => {
  it('that is longer than a line may be is refused with the way to mend it', async () => {
    const { faults } = await readMeasurementFile(after(length({ job: `"${'a'.repeat(MAX_LINE)}"` })));
    expect(faults).toMatchObject([
      { message: expect.stringMatching(/double quote is opened on this line and never closed/) as string },
    ]);
  });

  it('of many separators is refused by their count', async () => {
    const { faults } = await readMeasurementFile(file([...ROUND, ','.repeat(N) + 'x']));
    expect(faults).toMatchObject([
      { message: expect.stringMatching(/The line has \d+ fields where the header has/) as string },
    ]);
  });

  it('of columns that are all unknown is read as a header', async () => {
    const names = Array.from(
      { length: 9_000 },
      (_, column) => `value_${column.toString(36).replace(/\d/g, 'q')}`,
    );
    const { faults } = await readMeasurementFile(`job,${names.join(',')}\r\n`);
    expect(faults.length).toBeGreaterThan(0);
  });
});

describe('a file', () => {
  it('that is announced as larger than may be read is refused before it is read', async () => {
    let asked = 0;
    const source = (function* () {
      asked++;
      yield new Uint8Array(1);
    })();
    const { faults } = await readMeasurementFile(source, { bytes: MAX_FILE_BYTES + 1 });
    expect(faults).toMatchObject([
      { line: null, message: expect.stringMatching(/larger than 250 MB/) as string },
    ]);
    expect(asked).toBe(0);
  });

  it('that turns out larger than it said is refused where the limit is passed', async () => {
    const piece = Buffer.alloc(10_000_000, `${'a'.repeat(MAX_LINE - 1_000)}\n`);
    let given = 0;
    const source = (function* () {
      for (; given < 40; given++) yield piece;
    })();
    const read = async () => {
      for await (const _chunk of textBytes(source, { bytes: 0 }));
    };
    await expect(read()).rejects.toMatchObject(refusal(/larger than 250 MB/));
    expect(given).toBe(25);
  });

  it.each([
    ['lines', 'a\n', MAX_LINES, /more than 3 million lines/],
    ['blank lines', '\r\n', MAX_BLANK_LINES, /more than 100 thousand blank lines/],
  ])('of more %s than readings could need is refused at their count', async (_, line, most, why) => {
    const read = async (lines: number) => {
      let bytes = 0;
      for await (const chunk of textBytes(Buffer.alloc(lines * line.length, line), { bytes: 0 }))
        bytes += chunk.length;
      return bytes;
    };
    expect(await read(most)).toBe(most * line.length);
    await expect(read(most + 10_000)).rejects.toMatchObject({
      fault: { message: expect.stringMatching(why) as string },
    });
  });
});

describe('a text that a spreadsheet would run', () => {
  const STARTS = ['=1+1', '+1', '-1+2', '@SUM(A1)', "'=1", "''@x", '＝1+1', '＠x'];

  it.each(STARTS)('%s is written with an apostrophe before it and read as it was', async (text) => {
    const { readings } = await readMeasurementFile(after(length()));
    const changed = readings.map((reading) => ({ ...reading, technician: text, sheet: text, job: text }));
    const written = writeMeasurementFile(changed);
    for (const line of written.split('\r\n').slice(1, -1)) expect(line).toMatch(/^"?'/);
    const back = await readMeasurementFile(written);
    expect(back.faults).toEqual([]);
    expect(back.readings).toEqual(changed);
  });

  it('is one that holds a tab or a line end at its start, too, though no file can bring one', async () => {
    const { readings } = await readMeasurementFile(after(length()));
    const written = writeMeasurementFile(readings.map((reading) => ({ ...reading, technician: '\t=1' })));
    expect(written).toContain(`,'\t=1,`);
  });

  it('is no number: negative values stay numbers', async () => {
    const lines = file([
      ...ROUND,
      height({ setup: '4', gauge: 'C4', point: 'D', station_mm: '-20.5', zero: 'no' }),
    ]);
    const { readings, faults } = await readMeasurementFile(lines);
    expect(faults).toEqual([]);
    expect(writeMeasurementFile(readings)).toContain(',-20.5,');
  });
});

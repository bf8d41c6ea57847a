import { describe, expect, it } from 'vitest';
import { faultList, readMeasurementFile, type ReadOptions } from '@/lib/measure';
import { after, COLUMNS, file, height, length, ROUND, type Fields } from './lines';

const NOW = Date.UTC(2025, 5, 1);

async function faultsOf(
  text: string,
  options: ReadOptions = {},
): Promise<[number | null, string | null, string][]> {
  const { faults, readings } = await readMeasurementFile(text, { now: NOW, ...options });
  expect(readings.length === 0).toBe(faults.length > 0);
  return faults.map(({ line, column, message }) => [line, column, message]);
}

describe('the file as a whole', () => {
  it.each([
    ['nothing', '', null, 'The file is empty'],
    ['blank lines', '\n\r\n  \n', null, 'The file is empty'],
    ['a header alone', `${COLUMNS}\n`, 1, 'a header but no readings'],
    ['zeros within', 'job,stage\n\u0000\u0001', 2, 'binary'],
    ['a workbook', 'PK\u0003\u0004 …', null, 'spreadsheet workbook'],
    ['a PDF', '%PDF-1.7', null, 'PDF'],
    ['other text', 'Dear Sir,\nhere are the readings.\n', 1, 'not the header of a measurement file'],
    ['a quote that stays open', file([height({ job: '"J1' }), ...ROUND]), 2, 'never closed'],
  ])('%s is named', async (_, text, line, words) => {
    const faults = await faultsOf(text);
    expect(faults).toHaveLength(1);
    expect(faults[0]?.[0]).toBe(line);
    expect(faults[0]?.[2]).toContain(words);
  });

  it('an encoding other than UTF-8 is named with its first line', async () => {
    const text = after(height({ repeat: '2', technician: 'Jörg' }));
    const { faults } = await readMeasurementFile(Buffer.from(text, 'latin1'), { now: NOW });
    expect(faults).toMatchObject([{ line: 5, message: expect.stringContaining('not UTF-8') as string }]);
    const wide = await readMeasurementFile(Buffer.from(`\ufeff${text}`, 'utf16le'), { now: NOW });
    expect(wide.faults).toMatchObject([{ line: null, message: expect.stringContaining('UTF-16') as string }]);
  });

  it('a file that is too large is refused without being read', async () => {
    const source = (function* (): Generator<Uint8Array> {
      yield Buffer.from(COLUMNS);
      throw new Error('It was read.');
    })();
    const { faults } = await readMeasurementFile(source, { bytes: 300_000_000 });
    expect(faults[0]?.message).toContain('larger than 250 MB');
  });

  it('the list for reading is capped with a count, the data are not', async () => {
    const wrong = Array.from({ length: 150 }, (_, i) => height({ repeat: String(i + 1), value_mm: 'x' }));
    const { faults } = await readMeasurementFile(file(wrong), { now: NOW });
    expect(faults).toHaveLength(150);
    expect(faultList(faults)).toHaveLength(101);
    expect(faultList(faults).at(-1)).toBe('… and 50 more faults.');
  });
});

describe('the header', () => {
  it.each([
    ['job', 'jobb', 'job', 'Is it the column jobb?'],
    ['value_mm', 'value_in', 'value_in', 'multiply by 25.4'],
    ['value_mm', ' Value_Inch ', 'value_inch', 'multiply by 25.4'],
    ['clearance_mm', 'clearance_cm', 'clearance_cm', 'multiply by 10'],
    ['nominal_mm', 'nominal', 'nominal', 'name it nominal_mm'],
    ['side', 'sid', 'side', 'A height needs its side'],
    ['cause', 'job', 'job', 'names job twice'],
  ])('%s written as %s is one fault', async (column, written, named, words) => {
    const faults = await faultsOf(
      file(
        ROUND,
        COLUMNS.split(',')
          .map((c) => (c === column ? written : c))
          .join(','),
      ),
    );
    expect(faults.map(([line, at]) => [line, at])).toEqual([[1, named]]);
    expect(faults[0]?.[2]).toContain(words);
  });

  it('case, blanks and order are free', async () => {
    const turned = [COLUMNS, ...ROUND].map((line) => line.split(',').reverse());
    turned[0] = turned[0]?.map((name) => ` ${name.toUpperCase().replace('_', ' ')} `) ?? [];
    expect(await faultsOf(turned.map((fields) => fields.join(';')).join('\r\n'))).toEqual([]);
  });

  it('a column that states another unit is refused line by line', async () => {
    const lines = ROUND.map((line, i) => `${line},${i === 1 ? 'inch' : 'mm'}`);
    expect(await faultsOf(file(lines, `${COLUMNS},Unit`))).toEqual([
      [3, 'unit', expect.stringContaining('not millimetres') as string],
    ]);
  });
});

describe('one line', () => {
  it.each<[keyof Fields, string, string]>([
    ['value_mm', '99999', 'cannot be a height'],
    ['value_mm', 'NaN', 'no number'],
    ['value_mm', '1e5', 'exponent'],
    ['value_mm', '12 in', 'another unit (in)'],
    ['value_mm', '300 mm', 'Write the number alone'],
    ['value_mm', '"1,310.5"', 'separator between thousands'],
    ['value_mm', '"310,5"', 'decimal comma'],
    ['value_mm', '35o.1', 'it holds "o"'],
    ['value_mm', '', 'empty'],
    ['station_mm', '', 'needs its station'],
    ['station_mm', '1e3', 'exponent'],
    ['nominal_mm', '#N/A', 'error of the spreadsheet'],
    ['tolerance_mm', '0', 'above 0'],
    ['tolerance_mm', '-3', 'above 0'],
    ['clearance_mm', '-100', 'from 0'],
    ['attempt', '0', 'whole number'],
    ['attempt', '1.5', 'whole number'],
    ['repeat', '-1', 'whole number'],
    ['quantity', 'heigth', 'Did you mean height?'],
    ['stage', 'befor', 'Did you mean before?'],
    ['side', 'M', 'none of L, R'],
    ['side', '', 'needs its side'],
    ['zero', 'maybe', 'none of yes, no'],
    ['gauge_kind', 'digital tram', 'Did you mean digital-tram?'],
    ['cause', 'guage', 'Did you mean gauge?'],
    ['section', 'middle', 'none of front, center, rear'],
    ['point', 'K-N', 'not one point'],
    ['technician', '', 'empty'],
    ['setup', 'x'.repeat(81), '81 characters'],
    ['taken_at', '2025-02-30T10:00:00Z', 'does not exist'],
    ['taken_at', '2025-06-01T00:06:00Z', 'in the future'],
    ['taken_at', '06.01.2025 07:31', 'not an ISO 8601 time'],
    ['taken_at', '2025-01-06', 'no time of day'],
  ])('%s %s', async (column, value, words) => {
    const faults = await faultsOf(after(height({ repeat: '2', [column]: value })));
    expect(faults.map(([line, at]) => [line, at])).toEqual([[5, column]]);
    expect(faults[0]?.[2]).toContain(words);
  });

  it.each<[keyof Fields, string, string]>([
    ['point', 'K', 'needs both ends'],
    ['point', 'K-N-P', 'needs both ends'],
    ['point', 'K.L-K.L', 'same point at both ends'],
    ['side', 'L', 'has no side'],
    ['zero', 'yes', 'no zero station'],
    ['value_mm', '-5', 'cannot be a length'],
  ])('a length with %s %s', async (column, value, words) => {
    const faults = await faultsOf(after(length({ [column]: value })));
    expect(faults.map(([line, at]) => [line, at])).toEqual([[5, column]]);
    expect(faults[0]?.[2]).toContain(words);
  });

  it('too few and too many fields are named, extra empty ones are not', async () => {
    const short = height({ repeat: '2' }).split(',').slice(0, 9).join(',');
    const faults = await faultsOf(
      after(short, `${height({ repeat: '3' })},x`, `${height({ repeat: '4' })},,`),
    );
    expect(faults.map(([line]) => line)).toEqual([5, 6]);
    expect(faults[0]?.[2]).toContain('9 fields where the header has 21');
  });

  it('every wrong column of a line is named', async () => {
    const faults = await faultsOf(after(height({ stage: '', side: 'x', repeat: '2' })));
    expect(faults.map(([line, column]) => [line, column])).toEqual([
      [5, 'stage'],
      [5, 'side'],
    ]);
  });

  it('lines are counted in the file, also where a quoted field holds line ends', async () => {
    const lines = [`${height()},"one\ntwo"`, `${height({ repeat: '2', value_mm: 'x' })},`];
    const faults = await faultsOf(file(lines, `${COLUMNS},remark`));
    expect(faults.map(([line]) => line)).toEqual([4]);
  });

  it('a dot beside decimal commas is not guessed at', async () => {
    const lines = [...ROUND, length({ value_mm: '1.310' })].map((line) =>
      line.replaceAll(',', ';').replace('300.5', '300,5'),
    );
    const faults = await faultsOf(file(lines, COLUMNS.replaceAll(',', ';')));
    expect(faults).toEqual([[5, 'value_mm', expect.stringContaining('Write 1310 or 1,310') as string]]);
  });
});

import { describe, expect, it } from 'vitest';
import { faultSentence } from '@/lib/measure';
import { readTyped, rowsOf, typedOf, type SheetRows } from '@/lib/measure/sheet';
import { readSheetFile, writeSheetFile } from '@/lib/measure/sheet-file';
import { storedSheet } from '@/seed/dimensions';
import { SHEETS } from '@/seed/sheets';

const rowsIn = (text: string): SheetRows => {
  const { typed, faults } = readSheetFile(text);
  expect(faults.map(faultSentence)).toEqual([]);
  const { points, lengths, remarks } = readTyped(typed, { number: Number, tolerance: 3 });
  expect(remarks).toEqual([]);
  return { points, lengths };
};
const sentences = (...lines: string[]) => readSheetFile(lines.join('\n')).faults.map(faultSentence);

const POINTS = 'letter,side,section,station_mm,height_mm,zero';

describe('a sheet file', () => {
  it('that was downloaded and is loaded holds the same sheet', () => {
    for (const sheet of SHEETS.map(storedSheet)) {
      const rows = rowsOf(sheet);
      expect(rowsIn(writeSheetFile(rows))).toEqual(rows);
    }
    const odd = typedOf({ points: [], lengths: [] }, String);
    odd.points.push({
      ...{ letter: '=K', side: 'L', description: 'rail, "long"', feature: '-5', section: '' },
      ...{ station: '-20.5', height: '', halfWidth: '', zero: '', tolerance: '3', centerline: '0' },
    });
    const { points, lengths } = readTyped(odd, { number: Number, tolerance: 3 });
    expect(rowsIn(writeSheetFile({ points, lengths }))).toEqual({ points, lengths });
    // No spreadsheet takes it for a formula.
    expect(writeSheetFile({ points, lengths })).toContain("'=K,L");
  });

  it('with a mark that may stand between thousands is refused with both ways to write it, unless another number tells', () => {
    const file = (...stations: string[]) => ['letter;station_mm', ...stations.map((x) => `K;${x}`)];
    const refusal = 'can be read in two ways. Write 1310 if the mark stands between thousands,';
    expect(sentences(...file('1.310'))).toEqual([
      expect.stringContaining(`"1.310" ${refusal} 1.3100 if before decimals.`),
    ]);
    expect(sentences(...file('1.310'))[0]).toMatch(/line 2.*station_mm/i);
    expect(sentences(...file('1000,5', '1.310'))).toHaveLength(1);
    expect(sentences(...file('1,310'))).toHaveLength(1);
    expect(sentences(...file('1000.5', '1000,5', '1.310'))).toHaveLength(1);
    const stations = (...texts: string[]) =>
      rowsIn(file(...texts).join('\n')).points.map(({ station }) => station);
    expect(stations('1000,5', '1,310')).toEqual([1000.5, 1.31]);
    expect(stations('1000.5', '1.310')).toEqual([1000.5, 1.31]);
    expect(stations('1.3100', '1310')).toEqual([1.31, 1310]);
    // With commas between the fields a mark can only be a decimal point.
    expect(rowsIn('letter,station_mm\nK,1.310').points[0]?.station).toBe(1.31);
  });

  it('may have semicolons and decimal commas, words in German, either block alone, columns in any order', () => {
    expect(rowsIn('\ufeffstation_mm;letter;side;zero\r\n1000,5;K;beidseitig;ja\r\n').points).toMatchObject([
      { letter: 'K', side: 'both', station: 1000.5, zero: true, tolerance: 3 },
    ]);
    expect(rowsIn('from,to,nominal_mm,kind\nK,N,1500,gerade\n').lengths).toEqual([
      { from: 'K', to: 'N', kind: 'straight', nominal: 1500, tolerance: 3 },
    ]);
  });

  it('with a fault is refused whole, each with line, column, reason and mend', () => {
    const told = sentences(
      `${POINTS},widht`,
      'K,both,center,1000,240,yes,',
      'N,sideways,center,25OO,240,perhaps,',
      '',
      'from,to,nominal_mm',
      'K,N,1.500.0',
      'K,N,59.1 in',
    );
    expect(told).toEqual([
      'Line 1, column widht: A sheet file has no column widht for points. Take it out.',
      'Line 3, column side: "sideways" is none of both, L, R, center. Write one of them.',
      'Line 3, column station_mm: "25OO" is not a number: it holds "O". Write digits with one decimal point, such as 1310.5.',
      'Line 3, column zero: "perhaps" is none of yes, no. Write one of them.',
      'Line 6, column nominal_mm: "1.500.0" has a separator between thousands. Write it without, such as 1310.5.',
      'Line 7, column nominal_mm: "59.1 in" is in another unit (in). Convert it to millimetres and write the number alone.',
    ]);
    expect(readSheetFile([POINTS, 'K,sideways,,,,'].join('\n')).typed.points).toEqual([]);
  });

  it('that is none is refused in words', () => {
    expect(sentences('')).toEqual(['The file is empty.']);
    expect(sentences(POINTS)).toEqual(['The file has column names and no line under them.']);
    expect(sentences('K,1000,240')[0]).toMatch(/^Line 1: A line of column names has to come first/);
    expect(sentences('from,to', 'K,N')[0]).toMatch(/column nominal_mm: The column nominal_mm is missing/);
    expect(sentences(POINTS, 'K,"both,center,1,2,no')[0]).toMatch(/never closed/);
    expect(sentences('PK\u0000\u0003')[0]).toMatch(/not UTF-8 text/);
    expect(sentences(POINTS, 'K,both,center,1,2,no,another')[0]).toMatch(/7 fields, its column names are 6/);
  });
});

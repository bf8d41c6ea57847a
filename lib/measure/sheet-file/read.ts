import { parse } from 'csv-parse/sync';
import { readText } from '@/lib/measure/file/escape';
import type { Fault } from '@/lib/measure/file/fault';
import { nearest } from '@/lib/measure/file/nearest';
import { AMBIGUOUS_THOUSANDS, readNumber } from '@/lib/measure/file/number';
import {
  emptyLength,
  emptyPoint,
  kindFrom,
  MOST_TEXT,
  sectionFrom,
  sideFrom,
  yesFrom,
  type TypedSheet,
} from '@/lib/measure/sheet';
import { columnsOf, LENGTH_FILE_COLUMNS, NEEDED, POINT_FILE_COLUMNS } from './columns';

/** Larger is no sheet. */
export const MAX_SHEET_BYTES = 500_000;
export const MAX_SHEET_ROWS = 500;

/** A sheet file as it would be typed, in mm; empty where anything in it is at fault. */
export interface SheetFile {
  typed: TypedSheet;
  faults: Fault[];
}

type Block = 'points' | 'lengths';
interface Head {
  block: Block;
  /** Column of the file → place in the line. */
  at: Map<string, number>;
  width: number;
}

/**
 * Reads a sheet file (CSV, UTF-8; comma, semicolon or tab): a block of points, a block of lengths, or both, each under
 * its own line of column names. Every fault is named with line, column, reason and mend. Whether the sheet makes sense
 * is not asked here (`checkRows`).
 */
export function readSheetFile(text: string): SheetFile {
  const reading = new SheetReading();
  if (text.length > MAX_SHEET_BYTES)
    reading.fault(null, null, `The file is larger than ${MAX_SHEET_BYTES / 1000} kB: it is no sheet file.`);
  else if (/[\u0000\ufffd]/.test(text))
    reading.fault(null, null, 'The file is not UTF-8 text. Save the sheet as "CSV UTF-8" and load that.');
  else reading.read(text);
  return reading.faults.length > 0
    ? { typed: { points: [], lengths: [] }, faults: reading.faults }
    : { typed: reading.typed, faults: [] };
}

class SheetReading {
  readonly faults: Fault[] = [];
  readonly typed: TypedSheet = { points: [], lengths: [] };
  #head: Head | null = null;
  #decimalComma = false;
  /** Marks that stand before decimals for certain, as in `1000,5`. */
  readonly #decimalMarks = new Set<string>();
  readonly #ambiguous: { line: number; column: string; field: string; mark: string }[] = [];

  fault(line: number | null, column: string | null, message: string, value: string | null = null): void {
    this.faults.push({ line, column, message, value: value === null ? null : value.slice(0, 80) });
  }

  read(text: string): void {
    const separator = separatorOf(text);
    this.#decimalComma = separator !== ',';
    for (const { line, fields } of this.#records(text, separator)) {
      if (fields.every((field) => field === '')) continue;
      const block = blockOf(fields);
      if (block !== null) this.#head = this.#readHead(line, block, fields);
      else if (this.#head === null) {
        this.fault(
          line,
          null,
          'A line of column names has to come first: letter, side, station_mm, … for points, or from, to, kind, nominal_mm, tolerance_mm for lengths.',
        );
        return;
      } else this.#readRow(line, this.#head, fields);
      if (this.typed.points.length + this.typed.lengths.length > MAX_SHEET_ROWS) {
        this.fault(line, null, `A sheet has at most ${MAX_SHEET_ROWS} lines. Split it.`);
        return;
      }
    }
    this.#refuseThousands();
    if (this.#head === null) this.fault(null, null, 'The file is empty.');
    else if (this.typed.points.length + this.typed.lengths.length === 0 && this.faults.length === 0)
      this.fault(null, null, 'The file has column names and no line under them.');
  }

  #records(text: string, separator: string): { line: number; fields: string[] }[] {
    let line = 1;
    const records: { line: number; fields: string[] }[] = [];
    try {
      parse(text, {
        delimiter: separator,
        bom: true,
        trim: true,
        relax_quotes: true,
        relax_column_count: true,
        record_delimiter: ['\r\n', '\n', '\r'],
        on_record: (fields: string[], context) => {
          records.push({ line, fields });
          line = context.lines + 1;
          return null;
        },
      });
    } catch {
      this.fault(
        line,
        null,
        'A double quote is opened and never closed. Close it, or write two for a quote within a text.',
      );
      return [];
    }
    return records;
  }

  #readHead(line: number, block: Block, fields: readonly string[]): Head {
    const known = columnsOf(block);
    const at = new Map<string, number>();
    fields.forEach((field, index) => {
      const name = field.toLowerCase();
      if (name === '') return;
      if (!known.includes(name)) {
        const close = nearest(name, known);
        const mend = close === null ? 'Take it out.' : `Is it ${close}? Then name it so.`;
        this.fault(line, field, `A sheet file has no column ${field} for ${block}. ${mend}`);
      } else if (at.has(name))
        this.fault(line, name, `The column ${name} is there twice. Take one of them out.`);
      else at.set(name, index);
    });
    for (const column of NEEDED[block])
      if (!at.has(column)) this.fault(line, column, `The column ${column} is missing. Add it to every line.`);
    return { block, at, width: fields.length };
  }

  #readRow(line: number, head: Head, fields: readonly string[]): void {
    if (fields.length > head.width && fields.slice(head.width).some((field) => field !== '')) {
      const message = `The line has ${fields.length} fields, its column names are ${head.width}. Put texts with a separator in double quotes.`;
      this.fault(line, null, message);
      return;
    }
    const cell = (column: string, key: string): string => {
      const field = fields[head.at.get(column) ?? -1] ?? '';
      return field === '' ? '' : this.#cell(line, column, key, field);
    };
    if (head.block === 'points') {
      const row = emptyPoint();
      for (const [column, key] of Object.entries(POINT_FILE_COLUMNS))
        row[key] = cell(column, key) || row[key];
      this.typed.points.push(row);
    } else {
      const row = emptyLength();
      for (const [column, key] of Object.entries(LENGTH_FILE_COLUMNS)) row[key] = cell(column, key);
      this.typed.lengths.push(row);
    }
  }

  #cell(line: number, column: string, key: string, field: string): string {
    const word = WORDS[key];
    if (word !== undefined) {
      const found = word.from(field);
      if (found !== undefined) return found === true ? 'yes' : found === false ? '' : found;
      this.fault(line, column, `"${field.slice(0, 40)}" is none of ${word.words}. Write one of them.`, field);
      return '';
    }
    if (column.endsWith('_mm')) {
      const read = readNumber(field, this.#decimalComma);
      if ('number' in read) {
        this.#watchMark(line, column, field);
        return String(read.number);
      }
      this.fault(line, column, `"${field.slice(0, 40)}" ${read.problem}.`, field);
      return '';
    }
    const text = readText(field).normalize('NFC');
    if (text.length <= MOST_TEXT) return text;
    this.fault(
      line,
      column,
      `The text has ${text.length} characters; ${MOST_TEXT} are the most. Shorten it.`,
      field,
    );
    return '';
  }

  #watchMark(line: number, column: string, field: string): void {
    const mark = /[.,]/.exec(field)?.[0];
    if (!this.#decimalComma || mark === undefined) return;
    if (AMBIGUOUS_THOUSANDS.test(field)) this.#ambiguous.push({ line, column, field, mark });
    else this.#decimalMarks.add(mark);
  }

  /**
   * Where commas do not separate the fields, `1.310` is 1310 to one writer and 1.31 to another. It is read with
   * decimals where another number of the file shows that this is the mark before them, and refused otherwise.
   */
  #refuseThousands(): void {
    for (const { line, column, field, mark } of this.#ambiguous) {
      if (this.#decimalMarks.has(mark) && this.#decimalMarks.size === 1) continue;
      const message = `"${field}" can be read in two ways. Write ${field.replace(mark, '')} if the mark stands between thousands, ${field}0 if before decimals.`;
      this.fault(line, column, message, field);
    }
  }
}

const WORDS: Readonly<
  Record<string, { words: string; from: (text: string) => string | boolean | undefined }>
> = {
  side: { words: 'both, L, R, center', from: sideFrom },
  section: { words: 'front, center, rear', from: sectionFrom },
  kind: { words: 'straight, diagonal', from: kindFrom },
  zero: { words: 'yes, no', from: yesFrom },
};

/** What a line of column names is for; null where it is none. */
function blockOf(fields: readonly string[]): Block | null {
  const names = fields.map((field) => field.toLowerCase());
  if (names.includes('from') && names.includes('to')) return 'lengths';
  const known = names.filter((name) => columnsOf('points').includes(name)).length;
  return known >= 2 ? 'points' : null;
}

/** The separator under which the first line names most of the columns. */
function separatorOf(text: string): string {
  const first = text.split(/[\r\n]+/).find((line) => line.replace('\ufeff', '').trim() !== '') ?? '';
  const known = [...columnsOf('points'), ...columnsOf('lengths')];
  const count = (separator: string) =>
    first
      .replace('\ufeff', '')
      .split(separator)
      .filter((field) => known.includes(field.trim().replace(/^"|"$/g, '').toLowerCase())).length;
  return [',', ';', '\t'].reduce((best, one) => (count(one) > count(best) ? one : best));
}

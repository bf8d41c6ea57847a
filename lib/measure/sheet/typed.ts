import { RANGES } from './ranges';
import {
  isBlankLength,
  isBlankPoint,
  LENGTH_COLUMNS,
  POINT_COLUMNS,
  type LengthColumn,
  type PointColumn,
  type TypedLength,
  type TypedPoint,
  type TypedSheet,
} from './columns';
import { atLength, atPoint, remark, type Remark, type RemarkPlace } from './remark';
import type { LengthRow, PointRow, SheetRows } from './rows';
import { featureFrom, kindFrom, sectionFrom, sideFrom, yesFrom } from './typed-words';

export interface ReadTyped extends SheetRows {
  /** Of each row its place in what was typed, from 0. */
  places: { points: number[]; lengths: number[] };
  /** What could not be read. */
  remarks: Remark[];
}

interface Reading {
  /** A length in mm from what was typed; null where it is none. */
  number: (text: string) => number | null;
  /** Where a row states none, mm. */
  tolerance: number;
}

/** The longest text of a cell. */
export const MOST_TEXT = 80;

/** Reads a sheet as it is typed; empty rows are left out, and what cannot be read is named. */
export function readTyped(typed: TypedSheet, { number, tolerance }: Reading): ReadTyped {
  const remarks: Remark[] = [];
  const points = rows(typed.points, isBlankPoint);
  const lengths = rows(typed.lengths, isBlankLength);
  const cells = new Cells(number, remarks);
  return {
    points: points.map(({ row, at }) => pointFrom(cells, row, at, tolerance)),
    lengths: lengths.map(({ row, at }) => lengthFrom(cells, row, at, tolerance)),
    places: { points: points.map(({ at }) => at), lengths: lengths.map(({ at }) => at) },
    remarks,
  };
}

const rows = <Row>(all: readonly Row[], isBlank: (row: Row) => boolean) =>
  all.map((row, at) => ({ row, at })).filter(({ row }) => !isBlank(row));

class Cells {
  constructor(
    readonly number: (text: string) => number | null,
    readonly remarks: Remark[],
  ) {}

  text(text: string, at: RemarkPlace): string | null {
    const plain = text.trim().normalize('NFC');
    if (plain === '') return null;
    if (plain.length <= MOST_TEXT && !/[\p{Cc}\u2028\u2029\ufffd]/u.test(plain)) return plain;
    this.remarks.push(
      remark('fault', 'text-long', at, { text: `${plain.slice(0, 20)}…`, most: { count: MOST_TEXT } }),
    );
    return null;
  }

  length(text: string, at: RemarkPlace, range: { low: number; high: number }): number | null {
    if (text.trim() === '') return null;
    const value = this.number(text);
    if (value === null || !Number.isFinite(value)) {
      this.remarks.push(remark('fault', 'number-wrong', at, { text: shown(text) }));
      return null;
    }
    if (value >= range.low && value <= range.high) return value;
    const limits = { low: { mm: range.low }, high: { mm: range.high } };
    this.remarks.push(remark('fault', 'out-of-range', at, { value: { mm: value }, ...limits }));
    return null;
  }

  word<Word>(text: string, at: RemarkPlace, from: (text: string) => Word | undefined, none: Word): Word {
    if (text.trim() === '') return none;
    const found = from(text);
    if (found !== undefined) return found;
    this.remarks.push(remark('fault', 'word-wrong', at, { text: shown(text) }));
    return none;
  }
}

const shown = (text: string): string => (text.length > 30 ? `${text.slice(0, 30)}…` : text.trim());

function pointFrom(cells: Cells, row: TypedPoint, index: number, tolerance: number): PointRow {
  const at = (column: PointColumn) => atPoint(index, column);
  const length = (column: 'station' | 'height' | 'halfWidth' | 'tolerance' | 'centerline') =>
    cells.length(row[column], at(column), RANGES[column]);
  return {
    letter: row.letter.trim().normalize('NFC').slice(0, MOST_TEXT),
    side: cells.word(row.side, at('side'), sideFrom, 'both'),
    description: cells.text(row.description, at('description')),
    feature: featureFrom(cells.text(row.feature, at('feature'))),
    section: cells.word(row.section, at('section'), sectionFrom, null),
    station: length('station'),
    height: length('height'),
    halfWidth: length('halfWidth'),
    zero: cells.word(row.zero, at('zero'), yesFrom, false),
    tolerance: length('tolerance') ?? tolerance,
    centerline: length('centerline'),
  };
}

function lengthFrom(cells: Cells, row: TypedLength, index: number, tolerance: number): LengthRow {
  const at = (column: LengthColumn) => atLength(index, column);
  const length = (column: 'nominal' | 'tolerance') => cells.length(row[column], at(column), RANGES[column]);
  return {
    from: row.from.trim().normalize('NFC').slice(0, MOST_TEXT),
    to: row.to.trim().normalize('NFC').slice(0, MOST_TEXT),
    kind: cells.word(row.kind, at('kind'), kindFrom, null),
    // Not a number says that there is none; the check names it.
    nominal: length('nominal') ?? Number.NaN,
    tolerance: length('tolerance') ?? tolerance,
  };
}

/** A sheet as it would be typed, with lengths as `number` writes them. */
export function typedOf({ points, lengths }: SheetRows, number: (mm: number) => string): TypedSheet {
  const cell = (value: string | number | boolean | null): string => {
    if (value === null || value === false) return '';
    if (value === true) return 'yes';
    return typeof value === 'number' ? number(value) : value;
  };
  return {
    points: points.map(
      (row) => Object.fromEntries(POINT_COLUMNS.map((key) => [key, cell(row[key])])) as TypedPoint,
    ),
    lengths: lengths.map(
      (row) => Object.fromEntries(LENGTH_COLUMNS.map((key) => [key, cell(row[key])])) as TypedLength,
    ),
  };
}

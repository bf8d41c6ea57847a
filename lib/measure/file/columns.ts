import { nearest } from './nearest';
import type { Fault } from './fault';

/** Every column of the measurement file, in the order in which it is written. */
export const COLUMNS = [
  'job',
  'sheet',
  'stage',
  'attempt',
  'taken_at',
  'technician',
  'gauge',
  'gauge_kind',
  'setup',
  'quantity',
  'point',
  'side',
  'section',
  'station_mm',
  'zero',
  'nominal_mm',
  'tolerance_mm',
  'clearance_mm',
  'repeat',
  'value_mm',
  'cause',
] as const;

export type Column = (typeof COLUMNS)[number];

/** Columns without which no line can be read. Heights need more; that is seen line by line. */
const NEEDED: readonly Column[] = [
  'job',
  'stage',
  'taken_at',
  'technician',
  'gauge',
  'setup',
  'quantity',
  'point',
  'value_mm',
];

const MEASURES = ['value', 'nominal', 'station', 'tolerance', 'clearance'];

const UNITS: Record<string, string> = {
  in: 'inches; multiply by 25.4',
  inch: 'inches; multiply by 25.4',
  inches: 'inches; multiply by 25.4',
  cm: 'centimetres; multiply by 10',
  m: 'metres; multiply by 1000',
  ft: 'feet; multiply by 304.8',
  feet: 'feet; multiply by 304.8',
};

/** Where each column stands in the file. */
export interface Header {
  line: number;
  /** Number of fields in the header row. */
  width: number;
  at: Readonly<Partial<Record<Column, number>>>;
  /** Position of a column that states a unit for every line, where there is one. */
  unitAt: number | null;
  ignored: string[];
  faults: Fault[];
}

/** ` Taken at ` and `TAKEN_AT` are `taken_at`. */
export function columnName(field: string): string {
  return field
    .trim()
    .toLowerCase()
    .replace(/[\s-]+/g, '_');
}

function isColumn(name: string): name is Column {
  return (COLUMNS as readonly string[]).includes(name);
}

export function knownColumns(fields: readonly string[]): number {
  return fields.filter((field) => isColumn(columnName(field))).length;
}

/** Reads the header row: column order is free, case and blanks are not looked at, unknown columns are ignored. */
export function readHeader(line: number, fields: readonly string[]): Header {
  const at: Partial<Record<Column, number>> = {};
  const unknown: string[] = [];
  const faults: Fault[] = [];
  let unitAt: number | null = null;
  for (const [index, field] of fields.entries()) {
    const name = columnName(field);
    if (name === '') continue;
    if (!isColumn(name)) {
      if (name === 'unit' || name === 'units') unitAt = index;
      else unknown.push(name);
      continue;
    }
    if (at[name] !== undefined) {
      const message = `The header names ${name} twice. Remove or rename one of the two columns.`;
      faults.push({ line, column: name, message, value: field });
    }
    at[name] ??= index;
  }
  const foreign = new Set(unknown.filter((name) => foreignUnit(name, at) !== null));
  for (const name of foreign) {
    const unit = foreignUnit(name, at);
    if (unit !== null) faults.push({ line, column: name, message: unit.message, value: name });
  }
  const replaced = new Set([...foreign].map((name) => foreignUnit(name, at)?.column));
  const missing = NEEDED.filter((name) => at[name] === undefined && !replaced.has(name));
  if (missing.length === NEEDED.length) {
    const message = `This is not the header of a measurement file: none of the columns ${NEEDED.join(', ')} is there. The first line must name the columns, separated by comma, semicolon or tab.`;
    faults.push({ line, column: null, message, value: fields.join(' ').slice(0, 80) });
  } else {
    for (const name of missing) faults.push(missingColumn(line, name, unknown));
  }
  return {
    line,
    width: fields.length,
    at,
    unitAt,
    ignored: unknown.filter((n) => !foreign.has(n)),
    faults,
  };
}

/** A column such as `value_in` that stands where one in millimetres is expected. */
function foreignUnit(
  name: string,
  at: Partial<Record<Column, number>>,
): { column: Column; message: string } | null {
  // The measure ends where the letters do, so that a long name is looked through once.
  const match = /^([a-z]+)(?:(?:_\(?|\()([a-z"]*)|("[a-z"]*))?\)?$/.exec(name);
  const [, measure = '', unit = match?.[3] ?? ''] = match ?? [];
  const column = `${measure}_mm`;
  if (!MEASURES.includes(measure) || !isColumn(column) || at[column] !== undefined) return null;
  if (unit === '' || unit === 'mm') {
    return {
      column,
      message: `Column ${name} states no unit that Rehang knows. If it holds millimetres, name it ${column}.`,
    };
  }
  const known = UNITS[unit];
  const message =
    known === undefined
      ? `Column ${name} is in a unit that is not known. Lengths are millimetres: convert it and name it ${column}.`
      : `Column ${name} is in ${known} to get millimetres, and name the column ${column}.`;
  return { column, message };
}

function missingColumn(line: number, name: Column, unknown: readonly string[]): Fault {
  const close = nearest(name, unknown);
  const mend =
    close === null
      ? `Add it to the header and to every line.`
      : `Is it the column ${close}? Then name it ${name}.`;
  return { line, column: name, message: `The column ${name} is missing. ${mend}`, value: null };
}

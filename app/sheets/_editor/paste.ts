import {
  emptyLength,
  emptyPoint,
  featureFrom,
  kindFrom,
  LENGTH_COLUMNS,
  POINT_COLUMNS,
  sectionFrom,
  sideFrom,
  yesFrom,
  type TypedLength,
  type TypedPoint,
} from '@/lib/measure/sheet';

/** Rows that one paste may bring. */
const MOST = 300;

/** What a spreadsheet puts on the clipboard as rows of cells; null where it is one cell. */
export function cellsIn(text: string): string[][] | null {
  const lines = text.replace(/\r\n?/g, '\n').replace(/\n+$/, '').split('\n');
  if (lines.length === 1 && !text.includes('\t')) return null;
  return lines.slice(0, MOST).map((line) => line.split('\t').map((cell) => cell.trim()));
}

/** Puts cells into rows from one cell on, to the right and down; rows are added where they end. */
function fill<Row extends Record<Column, string>, Column extends string>(
  rows: readonly Row[],
  columns: readonly Column[],
  from: { row: number; column: Column },
  cells: readonly (readonly string[])[],
  empty: () => Row,
  word: (column: Column, text: string) => string,
): Row[] {
  const first = columns.indexOf(from.column);
  const filled = [...rows];
  cells.forEach((line, down) => {
    const row = { ...(filled[from.row + down] ?? empty()) };
    line.forEach((cell, right) => {
      const column = columns[first + right];
      if (column !== undefined) row[column] = word(column, cell) as Row[Column];
    });
    filled[from.row + down] = row;
  });
  return filled;
}

export const pastePoints = (
  rows: readonly TypedPoint[],
  from: { row: number; column: (typeof POINT_COLUMNS)[number] },
  cells: readonly (readonly string[])[],
): TypedPoint[] => fill(rows, POINT_COLUMNS, from, cells, emptyPoint, pointWord);

export const pasteLengths = (
  rows: readonly TypedLength[],
  from: { row: number; column: (typeof LENGTH_COLUMNS)[number] },
  cells: readonly (readonly string[])[],
): TypedLength[] =>
  fill(rows, LENGTH_COLUMNS, from, cells, emptyLength, (column, text) =>
    column === 'kind' ? (kindFrom(text) ?? text) : text,
  );

/** A word of a choice as the choice has it; what is none is left, and the check names it. */
function pointWord(column: (typeof POINT_COLUMNS)[number], text: string): string {
  if (column === 'side') return text === '' ? 'both' : (sideFrom(text) ?? text);
  if (column === 'section') return sectionFrom(text) ?? text;
  if (column === 'feature') return text === '' ? '' : (featureFrom(text) ?? text);
  if (column !== 'zero') return text;
  const yes = yesFrom(text);
  return yes === undefined ? text : yes ? 'yes' : '';
}

import { writeText } from '@/lib/measure';

/** What a cell may hold; null is an empty one. */
export type Cell = string | number | boolean | null;

/** A table to hand out: the names of its columns, and a row for each line. */
export interface CsvTable {
  columns: readonly string[];
  rows: readonly (readonly Cell[])[];
}

/** RFC 4180 with a head; text that a spreadsheet would run as a formula is written so that it does not. */
export function csvText({ columns, rows }: CsvTable): string {
  return [columns, ...rows].map((row) => `${row.map(field).join(',')}\r\n`).join('');
}

function field(cell: Cell): string {
  if (cell === null) return '';
  if (typeof cell === 'number') return Number.isFinite(cell) ? String(cell) : '';
  if (typeof cell === 'boolean') return cell ? 'yes' : 'no';
  const text = writeText(cell);
  return /[",\r\n]/.test(text) ? `"${text.replaceAll('"', '""')}"` : text;
}

import type { Cell, JsonCell } from './dialect';

export const quoted = (columns: readonly string[]): string =>
  columns.map((column) => `"${column}"`).join(', ');

/** A time as Prisma writes it in SQLite, so that text order is time order. */
export const timeText = (time: Date): string => time.toISOString().replace('Z', '+00:00');

/** A cell as JSON carries it. */
export function plain(cell: Exclude<Cell, JsonCell>): string | number | boolean | null {
  if (cell instanceof Date) return timeText(cell);
  // JSON would turn it into null without a word.
  if (typeof cell === 'number' && !Number.isFinite(cell))
    throw new RangeError(`${cell} is not a number to store.`);
  return cell;
}

import type { Cell, JsonCell } from './dialect';

export const quoted = (columns: readonly string[]): string =>
  columns.map((column) => `"${column}"`).join(', ');

/** A cell as JSON carries it, a time by what `time` makes of it. */
export function plain(
  cell: Exclude<Cell, JsonCell>,
  time: (at: Date) => string | number,
): string | number | boolean | null {
  if (cell instanceof Date) return time(cell);
  // JSON would turn it into null without a word.
  if (typeof cell === 'number' && !Number.isFinite(cell))
    throw new RangeError(`${cell} is not a number to store.`);
  return cell;
}

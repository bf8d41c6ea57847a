import { dialect, JsonCell, type Cell, type Dialect } from '@/lib/store/dialect';
import type { Statements } from './statements';

export type { Cell };

/** Rows that go to the database in one statement. */
const CHUNK = 10_000;

/**
 * Inserts many rows as one JSON value a chunk: thirty times as fast as a row at a time, and doubles arrive
 * to the last bit.
 * @param conflict what to do with a row that is there already, such as `DO UPDATE SET …`; without it such a
 * row is an error.
 */
export async function insertRows(
  queries: Pick<Statements, '$executeRawUnsafe'>,
  table: string,
  columns: readonly string[],
  rows: readonly (readonly Cell[])[],
  conflict?: string,
  to: Dialect = dialect(),
): Promise<void> {
  const json = new Set(columns.filter((_, index) => rows.every((row) => row[index] instanceof JsonCell)));
  const sql = `${to.insert(table, columns, json)}${conflict === undefined ? '' : ` ON CONFLICT ${conflict}`}`;
  for (let start = 0; start < rows.length; start += CHUNK) {
    await queries.$executeRawUnsafe(sql, to.packed(columns, rows.slice(start, start + CHUNK)));
  }
}

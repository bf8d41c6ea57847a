import type { Queries } from '@/lib/store/connection/database';
import { JsonCell, type Cell } from '@/lib/store/dialect';
import { Prisma } from '@/lib/store/generated/sqlite/client';
import type { Json } from '@/lib/store/types';
import type { Table } from './tables';

/** Values of the key's leading column, or rows, that are read at once. */
const STRETCH = 2_000;

const column = (name: string) => Prisma.raw(`"${name}"`);
const list = (names: readonly string[]) => Prisma.raw(names.map((name) => `"${name}"`).join(', '));

/** Every row of a table in the order of its key, a stretch at a time, in the table's order of columns. */
export async function* rowsOf(queries: Queries, table: Table): AsyncGenerator<Cell[][], void, undefined> {
  for await (const rows of table.named ? byName(queries, table) : byNumber(queries, table))
    if (rows.length > 0) yield rows.map((row) => table.columns.map((name) => cellOf(table, name, row[name])));
}

type Rows = AsyncGenerator<Record<string, unknown>[], void, undefined>;

async function* byNumber(queries: Queries, { name, key, columns }: Table): Rows {
  const from = column(name);
  const lead = column(key[0] ?? '');
  const ends = await queries.$queryRaw<{ first: number | bigint | null; last: number | bigint | null }[]>`
    SELECT min(${lead}) AS "first", max(${lead}) AS "last" FROM ${from}`;
  const [first, last] = [ends[0]?.first, ends[0]?.last];
  if (first == null || last == null) return;
  for (let start = Number(first); start <= Number(last); start += STRETCH) {
    yield queries.$queryRaw<Record<string, unknown>[]>`
      SELECT ${list(columns)} FROM ${from}
      WHERE ${lead} >= ${start} AND ${lead} < ${start + STRETCH} ORDER BY ${list(key)}`;
  }
}

/** A key of text is the whole key. Both databases keep text in the order of its bytes. */
async function* byName(queries: Queries, { name, key, columns }: Table): Rows {
  const lead = key[0] ?? '';
  for (let after: unknown = ''; ;) {
    const rows = await queries.$queryRaw<Record<string, unknown>[]>`
      SELECT ${list(columns)} FROM ${column(name)} WHERE ${column(lead)} > ${after}
      ORDER BY ${column(lead)} LIMIT ${STRETCH}`;
    yield rows;
    if (rows.length < STRETCH) return;
    after = rows.at(-1)?.[lead];
  }
}

function cellOf(table: Table, name: string, value: unknown): Cell {
  const json = table.json.get(name);
  if (value === null || value === undefined) return json?.optional === false ? new JsonCell(null) : null;
  if (json !== undefined) return new JsonCell(value as Json);
  if (value instanceof Date) return value;
  if (typeof value === 'bigint') return Number(value);
  if (typeof value === 'string' || typeof value === 'number' || typeof value === 'boolean') return value;
  throw new Error(`${table.name}.${name} holds something that cannot be copied.`);
}

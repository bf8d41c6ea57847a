import { openDatabase, PATIENCE, type Database, type Queries } from '@/lib/store/connection/database';
import type { DatabaseUrl } from '@/lib/store/connection/database-url';
import { dialectOf } from '@/lib/store/dialect';
import { lastSchema } from '@/lib/store/migrations/migration-list';
import { UNNAMED } from '@/lib/store/shop/get-shop';
import { changeAppendOnly } from '@/lib/store/sql/change-append-only';
import { insertRows } from '@/lib/store/sql/insert-rows';
import { digestOf, RowsGoingBy } from './digest';
import { rowsOf } from './rows';
import { tablesOf, type Table } from './tables';

export interface CopySummary {
  /** Rows of each table, equal on both sides. */
  rows: Map<string, number>;
}

/**
 * Copies everything from one migrated database into another, in one transaction on each side: the source as of
 * one moment, the target whole or not at all. Every table is read back and compared, row by row, before it is kept.
 * @param replace true: what the target holds makes way; false: a target that holds anything is refused.
 * @throws RangeError in words where the target is not empty, or the copy is not the same.
 */
export async function copyDatabase(
  from: DatabaseUrl,
  to: DatabaseUrl,
  { replace = false, say = () => undefined }: { replace?: boolean; say?: (line: string) => void } = {},
): Promise<CopySummary> {
  const tables = tablesOf(lastSchema(to.engine) ?? '');
  const [source, target] = [openDatabase(from), openDatabase(to)];
  try {
    return await atOneMoment(source, from, (reading) =>
      target.$transaction(async (writing) => {
        if (replace) await empty(writing, tables, to);
        else await refuseIfFull(writing, tables);
        const rows = new Map<string, number>();
        for (const table of tables) {
          rows.set(table.name, await copyTable(reading, writing, table, to));
          say(`${table.name}: ${rows.get(table.name) ?? 0} rows.`);
        }
        return { rows };
      }, PATIENCE),
    );
  } finally {
    await source.$disconnect();
    await target.$disconnect();
  }
}

/** In PostgreSQL readers do not hold up writers; a SQLite source is a backup already, or held for as long as it takes. */
function atOneMoment<Result>(
  source: Database,
  { engine }: DatabaseUrl,
  read: (queries: Queries) => Promise<Result>,
): Promise<Result> {
  if (engine === 'sqlite') return source.$transaction((queries) => read(queries), PATIENCE);
  return source.$transaction((queries) => read(queries), { ...PATIENCE, isolationLevel: 'Serializable' });
}

async function copyTable(reading: Queries, writing: Queries, table: Table, to: DatabaseUrl): Promise<number> {
  const dialect = dialectOf(to.engine);
  const read = new RowsGoingBy();
  for await (const rows of rowsOf(reading, table)) {
    read.add(rows);
    await insertRows(writing, table.name, table.columns, rows, undefined, dialect);
  }
  if (table.counted) await countOn(writing, table, to);
  const [original, copy] = [read.digest(), await digestOf(writing, table)];
  if (original.rows !== copy.rows || original.sha256 !== copy.sha256) {
    throw new RangeError(
      `${table.name} came out different: ${original.rows} rows there, ${copy.rows} here. Nothing was kept.`,
    );
  }
  return copy.rows;
}

/** SQLite counts on from the largest key by itself. */
async function countOn(writing: Queries, { name, key }: Table, { engine }: DatabaseUrl): Promise<void> {
  if (engine === 'sqlite') return;
  const id = key[0] ?? '';
  await writing.$executeRawUnsafe(
    `SELECT setval(pg_get_serial_sequence('"${name}"', '${id}'), coalesce(max("${id}"), 1), max("${id}") IS NOT NULL) FROM "${name}"`,
  );
}

function empty(writing: Queries, tables: readonly Table[], { engine }: DatabaseUrl): Promise<void> {
  const work = async () => {
    for (const { name } of tables.toReversed()) await writing.$executeRawUnsafe(`DELETE FROM "${name}"`);
  };
  return changeAppendOnly(writing, work, dialectOf(engine));
}

/** The shop that makes itself in an empty database, and that nothing refers to, makes way. */
async function refuseIfFull(writing: Queries, tables: readonly Table[]): Promise<void> {
  for (const { name } of tables.toReversed()) {
    if (name === 'Shop') await writing.shop.deleteMany({ where: { name: UNNAMED } });
    const rows = await writing.$queryRawUnsafe<unknown[]>(`SELECT 1 AS "one" FROM "${name}" LIMIT 1`);
    if (rows.length > 0)
      throw new RangeError(`The target holds data already (${name}). Name a new, empty database.`);
  }
}

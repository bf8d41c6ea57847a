import { Prisma } from '@/lib/store/generated/sqlite/client';
import { JsonCell, type Cell, type Dialect } from './dialect';
import { plain, quoted } from './text';

export const sqlite: Dialect = {
  among: (values) => Prisma.sql`IN (SELECT value FROM json_each(${JSON.stringify(values)}))`,

  insert(table, columns) {
    const cells = columns.map((_, index) => `value ->> ${index}`).join(', ');
    // WHERE true tells SQLite's parser that ON CONFLICT does not belong to a join.
    return `INSERT INTO "${table}" (${quoted(columns)}) SELECT ${cells} FROM json_each(?) WHERE true`;
  },

  json: (text) => Prisma.sql`${text}`,

  packed: (_, rows) => JSON.stringify(rows.map((row) => row.map(written))),

  /** One transaction at a time is all that SQLite has: see `connection/sqlite.ts`. */
  alone: () => Promise.resolve(),

  /** A trigger cannot be put to sleep: it is dropped, and made again as it was. */
  async openUp(queries, table) {
    const triggers = await queries.$queryRaw<{ name: string; sql: string }[]>`
      SELECT "name", "sql" FROM sqlite_master WHERE "type" = 'trigger' AND "tbl_name" = ${table}`;
    for (const { name } of triggers) await queries.$executeRawUnsafe(`DROP TRIGGER "${name}"`);
    return async () => {
      for (const { sql } of triggers) await queries.$executeRawUnsafe(sql);
    };
  },
};

/** JSON is kept as text, a time as milliseconds. */
const written = (cell: Cell) =>
  cell instanceof JsonCell ? JSON.stringify(cell.data) : plain(cell, (at) => at.getTime());

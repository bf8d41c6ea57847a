import { Prisma } from '@/lib/store/generated/sqlite/client';
import type { Json } from '@/lib/store/types';
import { JsonCell, type Dialect } from './dialect';
import { plain, quoted } from './text';

export const postgresql: Dialect = {
  among(values) {
    if (values.length === 0) return Prisma.sql`IN (NULL)`;
    const type = Prisma.raw(typeof values[0] === 'number' ? 'int[]' : 'text[]');
    return Prisma.sql`= ANY (ARRAY(SELECT jsonb_array_elements_text(${JSON.stringify(values)}::jsonb))::${type})`;
  },

  /** Rows are taken apart by the types of the table's own columns. */
  insert(table, columns, json) {
    // A null in JSON comes out of the rows as no value at all.
    const cells = columns.map((name) => (json.has(name) ? `coalesce("${name}", 'null')` : `"${name}"`));
    return `INSERT INTO "${table}" (${quoted(columns)}) SELECT ${cells.join(', ')} FROM json_populate_recordset(NULL::"${table}", $1::json)`;
  },

  json: (text) => Prisma.sql`${text}::jsonb`,

  packed(columns, rows) {
    const named = rows.map((row) =>
      Object.fromEntries(
        row.map((cell, index): [string, Json] => [
          columns[index] ?? '',
          cell instanceof JsonCell ? cell.data : plain(cell, (at) => at.toISOString()),
        ]),
      ),
    );
    return JSON.stringify(named);
  },

  async alone(queries, shop) {
    await queries.$queryRaw`SELECT "id" FROM "Shop" WHERE "id" = ${shop} FOR NO KEY UPDATE`;
  },

  /** Others can read the table meanwhile, but not write to it. */
  async openUp(queries, table) {
    await queries.$executeRawUnsafe(`ALTER TABLE "${table}" DISABLE TRIGGER USER`);
    return async () => {
      await queries.$executeRawUnsafe(`ALTER TABLE "${table}" ENABLE TRIGGER USER`);
    };
  },
};

import type { Queries } from '@/lib/store/connection/database';

interface Reference {
  name: string;
  table: string;
  to: string;
  definition: string;
}

/**
 * Does work that adds many rows to these tables of a server without looking up row by row what they refer to, which is more
 * than half of its work: it is looked up for all of them at the end, and the work undone where anything is missing. Others
 * would have to wait for the tables meanwhile, so that is done only while nobody else is connected.
 */
export async function withoutReferences(
  queries: Queries,
  tables: readonly string[],
  work: () => Promise<void>,
): Promise<void> {
  const references = await referencesOf(queries, tables);
  if (!(await isAlone(queries)) || !(await locks(queries, references))) return work();
  for (const { table, name } of references)
    await queries.$executeRawUnsafe(`ALTER TABLE ${table} DROP CONSTRAINT "${name}"`);
  await work();
  for (const { table, name, definition } of references)
    await queries.$executeRawUnsafe(`ALTER TABLE ${table} ADD CONSTRAINT "${name}" ${definition}`);
}

const referencesOf = (queries: Queries, tables: readonly string[]): Promise<Reference[]> =>
  queries.$queryRaw<Reference[]>`
    SELECT "conname"::text AS "name", "conrelid"::regclass::text AS "table", "confrelid"::regclass::text AS "to",
      pg_get_constraintdef("oid") AS "definition"
    FROM pg_constraint
    WHERE "contype" = 'f' AND "conrelid" IN (
      SELECT format('%I', "name")::regclass FROM unnest(${tables}::text[]) AS "named" ("name"))
    ORDER BY "table", "name"`;

/** Whether no other program is connected; the connections of this process go by one name, see `connection/postgresql.ts`. */
async function isAlone(queries: Queries): Promise<boolean> {
  const others = await queries.$queryRaw<unknown[]>`
    SELECT 1 AS "one" FROM pg_stat_activity
    WHERE "datname" = current_database() AND "backend_type" = 'client backend'
      AND "application_name" IS DISTINCT FROM current_setting('application_name') LIMIT 1`;
  return others.length === 0;
}

/** Takes the tables, if they can be had at once, before anything is changed: waiting could end in a deadlock. */
async function locks(queries: Queries, references: readonly Reference[]): Promise<boolean> {
  const names = [...new Set(references.flatMap(({ table, to }) => [table, to]))];
  if (names.length === 0) return false;
  await queries.$executeRawUnsafe('SAVEPOINT "before_locking"');
  try {
    await queries.$executeRawUnsafe(`LOCK TABLE ${names.join(', ')} IN ACCESS EXCLUSIVE MODE NOWAIT`);
    return true;
  } catch {
    await queries.$executeRawUnsafe('ROLLBACK TO SAVEPOINT "before_locking"');
    return false;
  }
}

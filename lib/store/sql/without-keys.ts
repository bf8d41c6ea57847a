import type { Queries } from '@/lib/store/connection/database';
import { Prisma } from '@/lib/store/generated/sqlite/client';

/** A reference, key or index: the tables that it is of, and how it is taken away and made again. */
interface Kept {
  of: string[];
  drop: string;
  make: string;
}

/**
 * Does work that adds many rows to these tables of a server without their keys and indexes, and without looking up what
 * their rows refer to: done row by row, that is three quarters of what the server does. All of it is made again for all
 * rows together, and the work undone where anything is missing or there twice. Others would have to wait for the tables
 * meanwhile, so that is done only while nobody else is connected.
 * @returns false, with nothing done, where somebody is.
 */
export async function withoutKeys(
  queries: Queries,
  tables: readonly string[],
  work: () => Promise<void>,
): Promise<boolean> {
  const kept = await keptOf(queries, tables);
  if (!(await isAlone(queries)) || !(await takenAway(queries, kept))) return false;
  await work();
  for (const { make } of kept.reverse()) await queries.$executeRawUnsafe(make);
  return true;
}

/** References from these tables and to them first, which look rows up by the keys and indexes after them. */
function keptOf(queries: Queries, tables: readonly string[]): Promise<Kept[]> {
  const named = Prisma.sql`(SELECT format('%I', "name")::regclass FROM unnest(${tables}::text[]) AS "named" ("name"))`;
  return queries.$queryRaw<Kept[]>`
    SELECT ARRAY["conrelid"::regclass::text, coalesce(nullif("confrelid", 0), "conrelid")::regclass::text] AS "of",
      format('ALTER TABLE %s DROP CONSTRAINT %I', "conrelid"::regclass, "conname") AS "drop",
      format('ALTER TABLE %s ADD CONSTRAINT %I %s', "conrelid"::regclass, "conname", pg_get_constraintdef("oid")) AS "make",
      CASE "contype" WHEN 'f' THEN 1 ELSE 2 END AS "turn"
    FROM pg_constraint
    WHERE ("contype" IN ('f', 'p') AND "conrelid" IN ${named}) OR ("contype" = 'f' AND "confrelid" IN ${named})
    UNION ALL
    SELECT ARRAY["indrelid"::regclass::text], format('DROP INDEX %s', "indexrelid"::regclass),
      pg_get_indexdef("indexrelid"), 2
    FROM pg_index WHERE "indrelid" IN ${named} AND NOT "indisprimary"
    ORDER BY "turn", "drop"`;
}

/**
 * Whether no other program is connected; the connections of this process go by one name, see `connection/postgresql.ts`.
 * Of a connection by another role a server may say nothing but that it is there.
 */
async function isAlone(queries: Queries): Promise<boolean> {
  const others = await queries.$queryRaw<unknown[]>`
    SELECT 1 AS "one" FROM pg_stat_activity
    WHERE "datname" = current_database() AND coalesce("backend_type", 'client backend') = 'client backend'
      AND "application_name" IS DISTINCT FROM current_setting('application_name') LIMIT 1`;
  return others.length === 0;
}

/**
 * Takes all of it away, if the tables can be had at once (waiting could end in a deadlock) and are ours to change.
 * @returns false, with nothing changed, where they are not.
 */
async function takenAway(queries: Queries, kept: readonly Kept[]): Promise<boolean> {
  const names = [...new Set(kept.flatMap(({ of }) => of))];
  if (names.length === 0) return false;
  await queries.$executeRawUnsafe('SAVEPOINT "before_locking"');
  try {
    await queries.$executeRawUnsafe(`LOCK TABLE ${names.join(', ')} IN ACCESS EXCLUSIVE MODE NOWAIT`);
    for (const { drop } of kept) await queries.$executeRawUnsafe(drop);
    return true;
  } catch {
    await queries.$executeRawUnsafe('ROLLBACK TO SAVEPOINT "before_locking"');
    return false;
  }
}

import type { Queries } from '@/lib/store/connection/database';

/** The server's own switch for rows that were looked through elsewhere; an owner of the tables may not be allowed it. */
const UNASKED = 'SET LOCAL session_replication_role = replica';
const ASKED = 'SET LOCAL session_replication_role TO DEFAULT';

/** A statement that adds rows without looking up what they refer to. */
export const unasked = (sql: string): string => `${UNASKED}; ${sql}; ${ASKED}`;

/**
 * Looks up what all rows of these tables refer to, for all of them together, after work that added many by `unasked`. One
 * by one that is three quarters of what a server does, and nobody has to wait for a table meanwhile. What they refer to must
 * not be taken away by others before the transaction ends: of a shop, whoever does that waits for its turn.
 * @returns false, with nothing done, where the server does not allow it.
 * @throws Error naming the reference where a row refers to nothing.
 */
export async function lookUpLater(
  queries: Queries,
  tables: readonly string[],
  work: () => Promise<void>,
): Promise<boolean> {
  if (!(await isAllowed(queries))) return false;
  await work();
  for (const { name, missing } of await referencesOf(queries, tables)) {
    const rows = await queries.$queryRawUnsafe<unknown[]>(missing);
    if (rows.length > 0)
      throw new Error(`A row was to be stored that refers to nothing: ${name}. Nothing was stored.`);
  }
  return true;
}

async function isAllowed(queries: Queries): Promise<boolean> {
  await queries.$executeRawUnsafe('SAVEPOINT "before_asking"');
  try {
    await queries.$executeRawUnsafe(UNASKED);
    await queries.$executeRawUnsafe(ASKED);
    return true;
  } catch {
    await queries.$executeRawUnsafe('ROLLBACK TO SAVEPOINT "before_asking"');
    return false;
  }
}

/** The references from these tables, with a question for a row that has one which leads nowhere. */
function referencesOf(
  queries: Queries,
  tables: readonly string[],
): Promise<{ name: string; missing: string }[]> {
  return queries.$queryRaw<{ name: string; missing: string }[]>`
    SELECT "conname"::text AS "name",
      format('SELECT 1 AS "one" FROM %s AS "from" WHERE %s AND NOT EXISTS (SELECT 1 FROM %s AS "to" WHERE %s) LIMIT 1',
        "conrelid"::regclass, string_agg(format('"from".%I IS NOT NULL', "own"."attname"), ' AND '),
        "confrelid"::regclass, string_agg(format('"to".%I = "from".%I', "far"."attname", "own"."attname"), ' AND '))
        AS "missing"
    FROM pg_constraint CROSS JOIN LATERAL unnest("conkey", "confkey") AS "pair" ("from", "to")
      JOIN pg_attribute AS "own" ON "own"."attrelid" = "conrelid" AND "own"."attnum" = "pair"."from"
      JOIN pg_attribute AS "far" ON "far"."attrelid" = "confrelid" AND "far"."attnum" = "pair"."to"
    WHERE "contype" = 'f'
      AND "conrelid" IN (SELECT format('%I', "name")::regclass FROM unnest(${tables}::text[]) AS "named" ("name"))
    GROUP BY "conname", "conrelid", "confrelid" ORDER BY "conname"`;
}

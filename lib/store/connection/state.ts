import { database, inProcess } from './database';

/**
 * A word for all that is committed in the database: while it stays the same, every question is answered as before.
 * Of SQLite it is the number of the file that changes with every commit of another connection, and pages ask on one
 * that commits nothing; of a server it names the transactions that a question now does not see, so that it changes
 * with every one that begins or ends.
 */
export async function databaseState(): Promise<string> {
  const sqlite = await inProcess();
  if (sqlite !== null) return String(sqlite.version);
  const [row] = await database().$queryRaw<
    { state: string }[]
  >`SELECT pg_current_snapshot()::text AS "state"`;
  if (row === undefined) throw new Error('The database server did not say what it holds.');
  return row.state;
}

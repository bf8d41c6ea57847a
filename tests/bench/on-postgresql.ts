import pg from 'pg';

/** The rows that one statement gives in a database of a server; nobody stays connected. */
export async function onPostgresql(
  address: string,
  database: string,
  sql: string,
): Promise<Record<string, unknown>[]> {
  const client = new pg.Client(`${address}/${database}`);
  await client.connect();
  try {
    return (await client.query<Record<string, unknown>>(sql)).rows;
  } finally {
    await client.end();
  }
}

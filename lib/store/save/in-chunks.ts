/** Fewer than any database's limit of values in one statement. */
const CHUNK = 5_000;

/** Asks for a long list piece by piece. */
export async function inChunks<Value, Row>(
  values: readonly Value[],
  ask: (chunk: Value[]) => Promise<Row[]>,
): Promise<Row[]> {
  const rows: Row[] = [];
  for (let start = 0; start < values.length; start += CHUNK) {
    for (const row of await ask(values.slice(start, start + CHUNK))) rows.push(row);
  }
  return rows;
}

import { createHash } from 'node:crypto';
import type { Queries } from '@/lib/store/connection/database';
import { JsonCell, type Cell } from '@/lib/store/dialect';
import type { Json } from '@/lib/store/types';
import { rowsOf } from './rows';
import type { Table } from './tables';

/** How much a table holds, and a hash of it that is the same in both databases. */
export interface TableDigest {
  rows: number;
  sha256: string;
}

export async function digestOf(queries: Queries, table: Table): Promise<TableDigest> {
  const hash = createHash('sha256');
  let rows = 0;
  for await (const stretch of rowsOf(queries, table)) {
    for (const row of stretch) hash.update(`${JSON.stringify(row.map(comparable))}\n`);
    rows += stretch.length;
  }
  return { rows, sha256: hash.digest('hex') };
}

const comparable = (cell: Cell): Json => {
  if (cell instanceof Date) return cell.getTime();
  return cell instanceof JsonCell ? sorted(cell.data) : cell;
};

/** PostgreSQL keeps an object's names in an order of its own. */
function sorted(json: Json): Json {
  if (Array.isArray(json)) return json.map(sorted);
  if (json === null || typeof json !== 'object') return json;
  const names = Object.keys(json).sort();
  return Object.fromEntries(names.map((name) => [name, sorted(json[name] ?? null)]));
}

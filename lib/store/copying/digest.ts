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

/** The digest of rows as they go by, in the order of their key. */
export class RowsGoingBy {
  readonly #hash = createHash('sha256');
  #rows = 0;

  add(rows: readonly Cell[][]): void {
    for (const row of rows) this.#hash.update(`${JSON.stringify(row.map(comparable))}\n`);
    this.#rows += rows.length;
  }

  /** Of all that went by; nothing may come after it. */
  digest(): TableDigest {
    return { rows: this.#rows, sha256: this.#hash.digest('hex') };
  }
}

export async function digestOf(queries: Queries, table: Table): Promise<TableDigest> {
  const all = new RowsGoingBy();
  for await (const rows of rowsOf(queries, table)) all.add(rows);
  return all.digest();
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

import type { Queries } from '@/lib/store/connection/database';
import { quoted } from '@/lib/store/dialect/text';
import type { RowCell, Rows, RowsOf } from './rows';
import { withoutReferences } from './without-references';

/** Rows that go to the server in one statement. */
const CHUNK = 10_000;

const TIME = 'timestamp without time zone';
/** Times are sent as epoch ms. */
const SENT_AS: Readonly<Record<string, string>> = { [TIME]: 'double precision' };
const MADE_OF_MS = `TIMESTAMP 'epoch' + INTERVAL '1 millisecond' * `;

/**
 * A server is reached by a network: rows wait until there are enough for a statement, and travel as a list for each column,
 * which the server takes apart in a fraction of the time that objects take. While it stores some, the next are made ready.
 */
export class RowsByStatement implements Rows {
  /** What the server is at work on. */
  #sent: Promise<unknown> = Promise.resolve();
  readonly #sequences = new Map<string, string>();
  readonly #types = new Map<string, Promise<Map<string, string>>>();

  constructor(private readonly queries: Queries) {}

  into(table: string, columns: readonly string[], same: Readonly<Record<string, number>> = {}): RowsOf {
    let waiting: RowCell[][] = columns.map(() => []);
    let count = 0;
    return {
      add: (row) => {
        for (const [index, column] of waiting.entries()) column.push(row[index] ?? null);
        count++;
      },
      flush: async () => {
        if (count === 0) return;
        const [rows, all] = [waiting, count];
        waiting = columns.map(() => []);
        count = 0;
        const sql = insertion(table, columns, same, await this.#typesOf(table));
        for (let from = 0; from < all; from += CHUNK)
          await this.#send(
            sql,
            rows.map((column) => listOf(column.slice(from, from + CHUNK))),
          );
      },
    };
  }

  truth = (is: boolean): RowCell => is;

  time = (ms: number): RowCell => ms;

  async newIds(table: string, count: number): Promise<number[]> {
    if (count === 0) return [];
    const sequence = await this.#sequenceOf(table);
    const [row] = await this.queries.$queryRaw<{ ids: string }[]>`
      SELECT string_agg(nextval(${sequence}::regclass)::text, ',') AS "ids" FROM generate_series(1, ${count}::int)`;
    return (row?.ids ?? '').split(',').map(Number);
  }

  /** Others may be reading by them: a server's indexes stay. References are what it spends its time on. */
  withoutIndexes = (
    tables: readonly string[],
    _: readonly string[],
    work: () => Promise<void>,
  ): Promise<void> =>
    withoutReferences(this.queries, tables, async () => {
      await work();
      await this.settled();
    });

  async settled(): Promise<void> {
    await this.#sent;
  }

  /** Waits for what was sent before, not for this. */
  async #send(sql: string, lists: readonly string[]): Promise<void> {
    await this.#sent;
    this.#sent = this.queries.$executeRawUnsafe(sql, ...lists);
    // Whoever waits for it hears of it.
    this.#sent.catch(() => undefined);
  }

  async #sequenceOf(table: string): Promise<string> {
    const known = this.#sequences.get(table);
    if (known !== undefined) return known;
    const [row] = await this.queries.$queryRaw<{ name: string }[]>`
      SELECT pg_get_serial_sequence(${`"${table}"`}, 'id') AS "name"`;
    const name = row?.name ?? '';
    this.#sequences.set(table, name);
    return name;
  }

  /** The types of a table's columns, by their names. */
  #typesOf(table: string): Promise<Map<string, string>> {
    const known = this.#types.get(table);
    if (known !== undefined) return known;
    const asked = this.queries.$queryRaw<{ name: string; type: string }[]>`
      SELECT "attname"::text AS "name", format_type("atttypid", NULL) AS "type" FROM pg_attribute
      WHERE "attrelid" = ${`"${table}"`}::regclass AND "attnum" > 0 AND NOT "attisdropped"`;
    const types = asked.then((rows) => new Map(rows.map(({ name, type }) => [name, type])));
    this.#types.set(table, types);
    return types;
  }
}

/** INSERT of rows that come as a list for each column. */
function insertion(
  table: string,
  columns: readonly string[],
  same: Readonly<Record<string, number>>,
  types: ReadonlyMap<string, string>,
): string {
  const typeOf = (column: string) => types.get(column) ?? 'text';
  const lists = columns.map((column, index) => {
    const type = typeOf(column);
    return `$${index + 1}::${SENT_AS[type] ?? type}[]`;
  });
  const cells = columns.map((column) => `${typeOf(column) === TIME ? MADE_OF_MS : ''}"${column}"`);
  return `INSERT INTO "${table}" (${quoted([...columns, ...Object.keys(same)])})
    SELECT ${[...cells, ...Object.values(same).map(Number)].join(', ')}
    FROM unnest(${lists.join(', ')}) AS "rows" (${quoted(columns)})`;
}

/** A list as the server reads one. */
function listOf(cells: readonly RowCell[]): string {
  return `{${cells.map(item).join(',')}}`;
}

function item(cell: RowCell): string {
  if (cell === null) return 'NULL';
  if (typeof cell === 'string') return `"${cell.replace(/["\\]/g, '\\$&')}"`;
  if (typeof cell === 'number' && !Number.isFinite(cell))
    throw new RangeError(`${cell} is not a number to store.`);
  return String(cell);
}

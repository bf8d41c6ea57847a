import type { Copy } from '@/lib/store/connection/copy-in';
import type { Queries } from '@/lib/store/connection/database';
import { quoted } from '@/lib/store/dialect/text';
import { lookUpLater, unasked } from './lookups-later';
import { PackedRows } from './packed-rows';
import type { RowCell, Rows, RowsOf } from './rows';
import { withoutKeys } from './without-keys';

/**
 * A server is reached by a network: rows wait until there are enough of them, and travel as the server copies them
 * (`packed-rows.ts`). While it stores some, the next are made ready.
 */
export class RowsByCopy implements Rows {
  /** What the server is at work on. */
  #sent: Promise<void> = Promise.resolve();
  readonly #sequences = new Map<string, string>();
  /** Tables of which it is looked up later what their rows refer to. */
  #later: readonly string[] = [];

  constructor(
    private readonly queries: Queries,
    private readonly copy: Copy,
  ) {}

  into(table: string, columns: readonly string[], same: Readonly<Record<string, number>> = {}): RowsOf {
    const all = [...columns, ...Object.keys(same)];
    const sql = `COPY "${table}" (${quoted(all)}) FROM STDIN (FORMAT binary)`;
    const always = Object.values(same);
    let packed: PackedRows | null = null;
    // Kept from one statement to the next, like the bytes that are made of it: nothing has to be cleared away.
    const waiting: RowCell[] = [];
    let end = 0;
    let sent: Promise<void> = Promise.resolve();
    return {
      add: (...row) => {
        for (let column = 0; column < columns.length; column++) waiting[end++] = row[column] ?? null;
        for (const cell of always) waiting[end++] = cell;
      },
      flush: async () => {
        if (end === 0) return;
        packed ??= new PackedRows(await this.#typesOf(table, all));
        await sent;
        const rows = packed.of(waiting, end);
        end = 0;
        await this.#sent;
        sent = this.#send(this.#later.includes(table) ? unasked(sql) : sql, rows);
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

  async withoutIndexes(
    tables: readonly string[],
    _: readonly string[],
    work: () => Promise<void>,
  ): Promise<void> {
    const whole = async () => {
      await work();
      await this.settled();
    };
    const later = async () => {
      this.#later = tables;
      await whole();
      this.#later = [];
    };
    if (await withoutKeys(this.queries, tables, whole)) return;
    if (await lookUpLater(this.queries, tables, later)) return;
    await whole();
  }

  async settled(): Promise<void> {
    await this.#sent;
  }

  #send(sql: string, rows: Uint8Array): Promise<void> {
    this.#sent = this.copy(sql, rows);
    // Whoever waits for it hears of it.
    this.#sent.catch(() => undefined);
    return this.#sent;
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

  async #typesOf(table: string, columns: readonly string[]): Promise<string[]> {
    const rows = await this.queries.$queryRaw<{ name: string; type: string }[]>`
      SELECT "attname"::text AS "name", format_type("atttypid", NULL) AS "type" FROM pg_attribute
      WHERE "attrelid" = ${`"${table}"`}::regclass AND "attnum" > 0 AND NOT "attisdropped"`;
    const types = new Map(rows.map(({ name, type }) => [name, type]));
    return columns.map((column) => types.get(column) ?? 'no type');
  }
}

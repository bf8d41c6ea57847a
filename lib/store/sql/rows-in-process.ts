import type { Sqlite } from '@/lib/store/connection/sqlite';
import { quoted } from '@/lib/store/dialect/text';
import type { RowCell, Rows, RowsOf } from './rows';

/** Rows of one statement: one each costs half as much again. */
const TOGETHER = 100;

/** An index that begins with ids which are handed out one after another. */
const IN_ORDER = /\(("shopId", )?"(id|jobId|roundId)"[,)]/;

/** SQLite lives in this process: prepared statements on its own connection are the fastest there is. */
export class RowsInProcess implements Rows {
  readonly #given = new Map<string, number>();

  constructor(private readonly sqlite: Sqlite) {}

  into(table: string, columns: readonly string[], same: Readonly<Record<string, number>> = {}): RowsOf {
    const all = [...columns, ...Object.keys(same)];
    // What is the same in all rows stands in the statement: it is not handed over again and again.
    const one = `(${[...columns.map(() => '?'), ...Object.values(same).map(Number)].join(', ')})`;
    const insert = (rows: number) =>
      this.sqlite.writer.prepare<RowCell[]>(
        `INSERT OR FAIL INTO "${table}" (${quoted(all)}) VALUES ${Array.from({ length: rows }, () => one).join(', ')}`,
      );
    const [many, single] = [insert(TOGETHER), insert(1)];
    const width = columns.length;
    const whole = width * TOGETHER;
    const cells: RowCell[] = [];
    let end = 0;
    return {
      add: (...row) => {
        for (let cell = 0; cell < width; cell++) cells[end++] = row[cell] ?? null;
        if (end < whole) return;
        // One by one they cross into SQLite in three quarters of the time that a list of them takes.
        many.run(...cells);
        end = 0;
      },
      flush: () => {
        for (let at = 0; at < end; at += width) single.run(...cells.slice(at, at + width));
        end = 0;
        return Promise.resolve();
      },
    };
  }

  /** The driver takes no booleans. */
  truth = (is: boolean): RowCell => (is ? 1 : 0);

  time = (ms: number): RowCell => ms;

  /** The transaction is alone, so ids are counted on from the last one given. */
  newIds(table: string, count: number): Promise<number[]> {
    const last = Math.max(this.#given.get(table) ?? 0, this.#lastId(table));
    this.#given.set(table, last + count);
    return Promise.resolve(Array.from({ length: count }, (_, index) => last + 1 + index));
  }

  /**
   * An index is sorted once in half the time that it takes to put every row in its place; where it may hold no two
   * rows alike, they are found then. Where references are looked up row by row, those that they are looked up by stay,
   * and so do those of a few rows. Those in whose order rows come anyway are kept as well: a row is put at their end, while
   * another thread reads the file; sorting is the work of one alone.
   */
  async withoutIndexes(
    tables: readonly string[],
    checked: readonly string[],
    work: () => Promise<void>,
  ): Promise<void> {
    const { writer } = this.sqlite;
    const dropped = tables.flatMap((table) =>
      writer
        .prepare<[string, number], { name: string; sql: string }>(
          `SELECT "name", "sql" FROM sqlite_master WHERE "type" = 'index' AND "tbl_name" = ?
            AND "sql" IS NOT NULL AND "sql" NOT LIKE '% WHERE %' AND (? OR "sql" NOT LIKE 'CREATE UNIQUE%')`,
        )
        .all(table, this.sqlite.loads ? 1 : 0)
        .filter(({ sql }) => !IN_ORDER.test(sql)),
    );
    for (const { name } of dropped) writer.exec(`DROP INDEX "${name}"`);
    // Where the work fails, the transaction's end brings them back.
    await this.sqlite.withoutChecks(checked, work);
    for (const { sql } of dropped) writer.exec(sql);
  }

  settled = (): Promise<void> => Promise.resolve();

  #lastId(table: string): number {
    const row = this.sqlite.writer
      .prepare<[string], { seq: bigint }>('SELECT "seq" FROM sqlite_sequence WHERE "name" = ?')
      .get(table);
    return Number(row?.seq ?? 0);
  }
}

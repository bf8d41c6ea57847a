import type { Sqlite } from '@/lib/store/connection/sqlite';
import type { RowCell, Rows, RowsOf } from './rows';

/** SQLite lives in this process: a prepared statement a row is the fastest there is, and holds no rows back. */
export class RowsOneByOne implements Rows {
  readonly #given = new Map<string, number>();

  constructor(private readonly sqlite: Sqlite) {}

  into(table: string, columns: readonly string[]): RowsOf {
    const names = columns.map((column) => `"${column}"`).join(', ');
    const marks = columns.map(() => '?').join(', ');
    const insert = this.sqlite.writer.prepare<[RowCell[]]>(
      `INSERT INTO "${table}" (${names}) VALUES (${marks})`,
    );
    return {
      add: (cells) => void insert.run(cells),
      flush: () => Promise.resolve(),
    };
  }

  /** The driver takes no booleans. */
  truth = (is: boolean): RowCell => (is ? 1 : 0);

  /** The transaction is alone, so ids are counted on from the last one given. */
  newIds(table: string, count: number): Promise<number[]> {
    const last = Math.max(this.#given.get(table) ?? 0, this.#lastId(table));
    this.#given.set(table, last + count);
    return Promise.resolve(Array.from({ length: count }, (_, index) => last + 1 + index));
  }

  #lastId(table: string): number {
    const row = this.sqlite.writer
      .prepare<[string], { seq: bigint }>('SELECT "seq" FROM sqlite_sequence WHERE "name" = ?')
      .get(table);
    return Number(row?.seq ?? 0);
  }
}

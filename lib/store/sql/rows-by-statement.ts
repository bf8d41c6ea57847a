import type { Queries } from '@/lib/store/connection/database';
import { insertRows } from './insert-rows';
import type { RowCell, Rows, RowsOf } from './rows';
import { TimeTexts } from './time-text';

/** A server is reached by a network: rows wait until there are enough for a statement. */
export class RowsByStatement implements Rows {
  private readonly times = new TimeTexts();

  constructor(private readonly queries: Queries) {}

  into(table: string, columns: readonly string[], same: Readonly<Record<string, number>> = {}): RowsOf {
    const all = [...columns, ...Object.keys(same)];
    const alike = Object.values(same);
    let waiting: RowCell[][] = [];
    return {
      add: (cells) => void waiting.push([...cells, ...alike]),
      flush: async () => {
        const rows = waiting;
        waiting = [];
        await insertRows(this.queries, table, all, rows);
      },
    };
  }

  truth = (is: boolean): RowCell => is;

  time = (ms: number): RowCell => this.times.of(ms);

  async newIds(table: string, count: number): Promise<number[]> {
    const rows = await this.queries.$queryRaw<{ id: number }[]>`
      SELECT nextval(pg_get_serial_sequence(${`"${table}"`}, 'id'))::int AS "id" FROM generate_series(1, ${count}::int)`;
    return rows.map(({ id }) => id);
  }

  /** Others may be reading by them: a server's indexes stay. */
  withoutIndexes = (_: readonly string[], work: () => Promise<void>): Promise<void> => work();
}

/** What a new row holds, in the form that the database takes; see `truth` and `time`. */
export type RowCell = string | number | boolean | null;

/** New rows of one table. */
export interface RowsOf {
  add(cells: RowCell[]): void;
  /** Sends what has not gone yet; whatever refers to these rows comes after. */
  flush(): Promise<void>;
}

/** Rows by the million, within an open transaction. The database holds them to its keys, checks and references as any others. */
export interface Rows {
  into(table: string, columns: readonly string[]): RowsOf;
  /** Yes and no, as a cell. */
  truth(is: boolean): RowCell;
  /** A time in epoch ms, as a cell. */
  time(ms: number): RowCell;
  /** As many ids as are asked for, that no row of the table has or will be given. */
  newIds(table: string, count: number): Promise<number[]>;
  /** Does work that adds many times the rows that the tables hold, where it can without keeping their indexes meanwhile. */
  withoutIndexes(tables: readonly string[], work: () => Promise<void>): Promise<void>;
}

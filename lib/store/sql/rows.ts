/** What a new row holds, in the form that the database takes; see `truth` and `time`. */
export type RowCell = string | number | boolean | null;

/** New rows of one table. */
export interface RowsOf {
  /**
   * Whatever these rows refer to was flushed before. Cells come one by one: of a list that holds numbers alone the engine
   * makes another for each row, since lists of other rows hold texts as well.
   */
  add(...cells: readonly RowCell[]): void;
  /** Sends what has not gone yet; whatever is asked or sent after it finds it there, or fails. */
  flush(): Promise<void>;
}

/** Rows by the million, within an open transaction. The database holds them to its keys, checks and references as any others. */
export interface Rows {
  /** @param same columns that hold one number in all of these rows; they are not among `columns`. */
  into(table: string, columns: readonly string[], same?: Readonly<Record<string, number>>): RowsOf;
  /** Yes and no, as a cell. */
  truth(is: boolean): RowCell;
  /** A time in epoch ms, as a cell. */
  time(ms: number): RowCell;
  /** As many ids as are asked for, that no row of the table has or will be given. */
  newIds(table: string, count: number): Promise<number[]>;
  /** Waits until all that was sent is there. */
  settled(): Promise<void>;
  /**
   * Does work that adds many times the rows that the tables hold, where it can without keeping their indexes meanwhile, or
   * without looking up what they refer to until its end.
   * @param checked those of them whose CHECKs whoever adds the rows asks first: the database need not ask again.
   */
  withoutIndexes(
    tables: readonly string[],
    checked: readonly string[],
    work: () => Promise<void>,
  ): Promise<void>;
}

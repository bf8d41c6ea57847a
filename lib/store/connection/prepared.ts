import type Database from 'better-sqlite3';
import { parsedOnce } from './parsed-once';

type Row = Record<string, unknown>;

export interface Prepared {
  statement: Database.Statement<unknown[], Row>;
  /** Turns what SQLite keeps as numbers and text into times, truths and plain data, in place. */
  convert: (row: Row) => void;
}

/** What a column that was declared so is read as. */
const READ_AS: Readonly<Record<string, (kept: unknown) => unknown>> = {
  DATETIME: (kept) => new Date(Number(kept)),
  BOOLEAN: Boolean,
  JSONB: (kept) => parsedOnce(String(kept)),
};

/** So many questions are asked in all, in their few forms; one that comes in ever new forms must not fill the memory. */
const MOST = 500;

/** Statements of one connection, each prepared when it is asked for the first time. */
export class PreparedStatements {
  readonly #known = new Map<string, Prepared>();

  constructor(private readonly connection: Database.Database) {}

  of(sql: string): Prepared {
    const known = this.#known.get(sql);
    if (known !== undefined) return known;
    if (this.#known.size >= MOST) this.#known.clear();
    // The adapter has its connections give bigints.
    const statement = this.connection.prepare<unknown[], Row>(sql).safeIntegers(false);
    const made = { statement, convert: converter(statement.reader ? statement.columns() : []) };
    this.#known.set(sql, made);
    return made;
  }
}

function converter(columns: readonly Database.ColumnDefinition[]): (row: Row) => void {
  const read = columns.flatMap(({ name, type }) => {
    const as = READ_AS[type?.toUpperCase() ?? ''];
    return as === undefined ? [] : [{ name, as }];
  });
  return (row) => {
    for (const { name, as } of read) if (row[name] !== null) row[name] = as(row[name]);
  };
}

import type { Queries } from '@/lib/store/connection/database';
import type { Prisma } from '@/lib/store/generated/sqlite/client';
import type { Statements } from '@/lib/store/sql/statements';
import type { Json, ShopId } from '@/lib/store/types';

/** Plain data for a column that holds JSON, told apart from text. */
export class JsonCell {
  constructor(readonly data: Json) {}
}

export type Cell = string | number | boolean | Date | JsonCell | null;

/** In what the two databases differ where Prisma's own queries do not do: many values, and whose turn it is. */
export interface Dialect {
  /** `IN` for a list of any length, which travels as one value. */
  among(values: readonly (string | number)[]): Prisma.Sql;
  /**
   * INSERT of many rows, which travel as the statement's one value, packed; to be followed by ON CONFLICT.
   * @param json those of the columns that hold JSON in every row.
   */
  insert(table: string, columns: readonly string[], json: ReadonlySet<string>): string;
  /** A text of JSON as a value for a column that holds JSON. */
  json(text: string): Prisma.Sql;
  packed(columns: readonly string[], rows: readonly (readonly Cell[])[]): string;
  /** Waits until no other transaction changes this shop, and keeps others from it until this one ends. */
  alone(queries: Pick<Statements, '$queryRaw'>, shop: ShopId): Promise<void>;
  /** Lets rows of an append-only table be changed, within the transaction, until what is returned is called. */
  openUp(queries: Queries, table: string): Promise<() => Promise<void>>;
}

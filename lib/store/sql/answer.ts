import type { Prepared } from '@/lib/store/connection/prepared';

/** The rows of a prepared statement, with times, truths and JSON as Prisma gives them. */
export function answer<Row>({ statement, convert }: Prepared, values: readonly unknown[]): Row[] {
  const rows = statement.all(...values.map(cell));
  for (const row of rows) convert(row);
  return rows as Row[];
}

/** The driver takes no truths and no times. */
export function cell(value: unknown): unknown {
  if (typeof value === 'boolean') return value ? 1 : 0;
  return value instanceof Date ? value.getTime() : (value ?? null);
}

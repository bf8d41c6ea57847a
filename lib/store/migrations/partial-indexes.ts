import { PARTIAL } from '@/prisma/checks.mjs';
import type { EngineName } from '@/lib/store/connection/database-url';

/** Ends a migration that makes a table, or remakes it on SQLite, with the indexes of a few of its rows. */
export function withPartialIndexes(sql: string, engine: EngineName): string {
  const made = Object.entries(PARTIAL).filter(([table]) =>
    new RegExp(`CREATE TABLE "${engine === 'sqlite' ? '(new_)?' : ''}${table}"`).test(sql),
  );
  if (made.length === 0) return sql;
  return `${sql.trimEnd()}\n\n-- Indexes of a few rows\n${made.map(([, index]) => index).join('\n')}\n`;
}

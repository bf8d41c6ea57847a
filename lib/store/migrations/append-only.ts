import { APPEND_ONLY } from '@/prisma/checks.mjs';
import type { EngineName } from '@/lib/store/connection/database-url';

const refusal = (table: string) => `rows of ${table} are only ever added`;

const sqlite = (table: string) =>
  ['UPDATE', 'DELETE'].map(
    (change) =>
      `CREATE TRIGGER "${table}_no_${change.toLowerCase()}" BEFORE ${change} ON "${table}" BEGIN SELECT RAISE(ABORT, '${refusal(table)}'); END;`,
  );

const postgresql = (table: string) => [
  `CREATE OR REPLACE FUNCTION "${table}_only_added"() RETURNS trigger AS $$ BEGIN RAISE EXCEPTION '${refusal(table)}'; END $$ LANGUAGE plpgsql;`,
  `CREATE OR REPLACE TRIGGER "${table}_no_change" BEFORE UPDATE OR DELETE ON "${table}" FOR EACH ROW EXECUTE FUNCTION "${table}_only_added"();`,
];

/**
 * Ends a migration that makes or remakes an append-only table with the triggers that keep it so: SQLite drops
 * them with the old table.
 */
export function withAppendOnly(sql: string, engine: EngineName): string {
  const made = APPEND_ONLY.filter((table) => new RegExp(`(CREATE|ALTER) TABLE "(new_)?${table}"`).test(sql));
  const triggers = made.flatMap(engine === 'sqlite' ? sqlite : postgresql);
  return triggers.length === 0 ? sql : `${sql.trimEnd()}\n\n-- Append-only\n${triggers.join('\n')}\n`;
}

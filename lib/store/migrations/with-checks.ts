import { CHECKS, CLUSTERED } from '@/prisma/checks.mjs';
import type { EngineName } from '@/lib/store/connection/database-url';

const checks: Record<string, readonly string[] | undefined> = CHECKS;
const CREATE_TABLE = /CREATE TABLE "(?:new_)?(\w+)" \(\n([\s\S]*?)\n\);/g;

/** PostgreSQL's own order of text depends on the server; bytes are in order everywhere, and in SQLite. */
const byteOrder = (sql: string): string => sql.replace(/("\w+"\s+TEXT)\b/g, '$1 COLLATE "C"');

/** Puts what `prisma/checks.mjs` asks for into every CREATE TABLE of a migration, and gives text one order. */
export function withChecks(sql: string, engine: EngineName): string {
  return checked(engine === 'sqlite' ? sql : byteOrder(sql), engine);
}

function checked(sql: string, engine: EngineName): string {
  return sql.replace(CREATE_TABLE, (statement, table: string, body: string) => {
    const lines = (checks[table] ?? []).map((check) => `    CHECK (${check})`);
    const clustered = engine === 'sqlite' && CLUSTERED.includes(table) ? ' WITHOUT ROWID' : '';
    const name = statement.slice(0, statement.indexOf('('));
    return `${name}(\n${[body.replace(/,?\s*$/, ''), ...lines].join(',\n')}\n)${clustered};`;
  });
}

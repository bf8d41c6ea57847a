import { CHECKS, CLUSTERED } from '@/prisma/checks.mjs';
import type { EngineName } from './migration-list';

const checks: Record<string, readonly string[] | undefined> = CHECKS;
const CREATE_TABLE = /CREATE TABLE "(?:new_)?(\w+)" \(\n([\s\S]*?)\n\);/g;

/** Puts what `prisma/checks.mjs` asks for into every CREATE TABLE of a migration. */
export function withChecks(sql: string, engine: EngineName): string {
  return sql.replace(CREATE_TABLE, (statement, table: string, body: string) => {
    const lines = (checks[table] ?? []).map((check) => `    CHECK (${check})`);
    const clustered = engine === 'sqlite' && CLUSTERED.includes(table) ? ' WITHOUT ROWID' : '';
    const name = statement.slice(0, statement.indexOf('('));
    return `${name}(\n${[body.replace(/,?\s*$/, ''), ...lines].join(',\n')}\n)${clustered};`;
  });
}

/**
 * `npm run migration -- NAME` writes the next migration of both databases from the models file, to be
 * read and committed. It compares data models, never a database.
 */
import { mkdirSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import type { EngineName } from '@/lib/store/connection/database-url';
import { withAppendOnly } from '@/lib/store/migrations/append-only';
import { lastSchema, migrationsFolder } from '@/lib/store/migrations/migration-list';
import { noPostgresql } from '@/lib/store/migrations/no-postgresql';
import { withPartialIndexes } from '@/lib/store/migrations/partial-indexes';
import { schemaEngine } from '@/lib/store/migrations/schema-engine';
import { SqliteMigrationAdapter } from '@/lib/store/migrations/sqlite-migration-adapter';
import { withChecks } from '@/lib/store/migrations/with-checks';
import { schemaFor } from './generate.mjs';

const adapters = {
  sqlite: () => new SqliteMigrationAdapter(':memory:'),
  postgresql: noPostgresql,
};

async function difference(engine: EngineName, from: string | null, to: string): Promise<string> {
  const schemas = await schemaEngine(adapters[engine](), to);
  const datamodel = (content: string) => ({
    tag: 'schemaDatamodel' as const,
    files: [{ path: 'schema.prisma', content }],
  });
  const { stdout } = await schemas.diff({
    from: from === null ? { tag: 'empty' } : datamodel(from),
    to: datamodel(to),
    script: true,
    exitCode: null,
    filters: { externalTables: [], externalEnums: [] },
  });
  schemas.free();
  return stdout ?? '';
}

const name = process.argv[2];
if (name === undefined || !/^[a-z][a-z0-9_]*$/.test(name)) {
  console.error(
    'Give the migration a name of small letters, digits and underscores: npm run migration -- first_tables',
  );
  process.exit(1);
}
const stamp = new Date().toISOString().replace(/\D/g, '').slice(0, 14);
for (const engine of ['sqlite', 'postgresql'] as const) {
  const to = schemaFor(engine);
  const changes = withChecks(await difference(engine, lastSchema(engine), to), engine);
  const sql = withPartialIndexes(withAppendOnly(changes, engine), engine);
  if (sql.trim() === '' || sql.includes('This is an empty migration')) {
    console.log(`${engine}: nothing changed.`);
    continue;
  }
  const folder = join(migrationsFolder(engine), `${stamp}_${name}`);
  mkdirSync(folder, { recursive: true });
  writeFileSync(join(folder, 'migration.sql'), sql);
  writeFileSync(join(folder, 'schema.prisma'), to);
  console.log(`${engine}: wrote ${folder}`);
}

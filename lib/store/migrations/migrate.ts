import { databaseUrl } from '@/lib/store/connection/database-url';
import { lastSchema, migrationList } from './migration-list';
import { schemaEngine } from './schema-engine';
import { SqliteMigrationAdapter } from './sqlite-migration-adapter';

/**
 * Brings a database to the newest committed schema, creating the file and its folder where absent.
 * @param address as `DATABASE_URL`.
 * @returns names of the migrations just applied; empty where the database was up to date.
 * @throws Error naming the migration that failed; what it had begun is undone.
 */
export async function migrate(address?: string): Promise<string[]> {
  const url = databaseUrl(address);
  if (url.engine === 'postgresql') {
    throw new Error(
      'This version keeps its data in SQLite only: set DATABASE_URL to file: and a path, or leave it out.',
    );
  }
  const schema = lastSchema(url.engine);
  if (schema === null)
    throw new Error('prisma/migrations holds no migration; the copy of the program is incomplete.');
  const adapters = new SqliteMigrationAdapter(url.path);
  const engine = await schemaEngine(adapters, schema);
  try {
    const migrationsList = migrationList(url.engine);
    const filters = { externalTables: [], externalEnums: [] };
    if (await hasHistory(adapters)) {
      const { failedMigrationNames } = await engine.diagnoseMigrationHistory({
        migrationsList,
        filters,
        optInToShadowDatabase: false,
      });
      // A failed migration was undone with all it had begun, so it can be tried again.
      for (const migrationName of failedMigrationNames)
        await engine.markMigrationRolledBack({ migrationName });
    }
    const { appliedMigrationNames } = await engine.applyMigrations({ migrationsList, filters });
    return appliedMigrationNames;
  } finally {
    engine.free();
    await adapters.close();
  }
}

async function hasHistory(adapters: SqliteMigrationAdapter): Promise<boolean> {
  const connection = await adapters.connect();
  const sql = `SELECT name FROM sqlite_master WHERE type = 'table' AND name = '_prisma_migrations'`;
  const { rows } = await connection.queryRaw({ sql, args: [], argTypes: [] });
  await connection.dispose();
  return rows.length > 0;
}

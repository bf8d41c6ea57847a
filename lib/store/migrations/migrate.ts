import { databaseUrl } from '@/lib/store/connection/database-url';
import { fillEmpty } from './fill-empty';
import { isNewest } from './history';
import { lastSchema, migrationList, migrationNames } from './migration-list';
import { schemaEngine } from './schema-engine';
import { PostgresqlMigrationAdapter } from './postgresql-migration-adapter';
import { SqliteMigrationAdapter } from './sqlite-migration-adapter';

/**
 * Brings a database to the newest committed schema, creating SQLite's file and its folder where absent.
 * @param address as `DATABASE_URL`.
 * @returns names of the migrations just applied; empty where the database was up to date.
 * @throws Error naming the migration that failed; what it had begun is undone.
 */
export async function migrate(address?: string): Promise<string[]> {
  const url = databaseUrl(address);
  const schema = lastSchema(url.engine);
  if (schema === null)
    throw new Error('prisma/migrations holds no migration; the copy of the program is incomplete.');
  const adapters =
    url.engine === 'sqlite' ? new SqliteMigrationAdapter(url.path) : new PostgresqlMigrationAdapter(url.url);
  let engine: Awaited<ReturnType<typeof schemaEngine>> | null = null;
  try {
    await adapters.ready();
    const history = await adapters.history();
    // The engine takes more memory and time to begin than most programs that ask for it.
    if (isNewest(history, migrationNames(url.engine))) return [];
    if (url.engine === 'sqlite' && fillEmpty(url.path)) return migrationNames(url.engine);
    engine = await schemaEngine(adapters, schema);
    const migrationsList = migrationList(url.engine);
    const filters = { externalTables: [], externalEnums: [] };
    if (history.length > 0) {
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
    engine?.free();
    await adapters.close();
  }
}

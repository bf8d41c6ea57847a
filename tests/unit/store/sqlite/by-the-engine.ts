import { lastSchema, migrationList } from '@/lib/store/migrations/migration-list';
import { schemaEngine } from '@/lib/store/migrations/schema-engine';
import { SqliteMigrationAdapter } from '@/lib/store/migrations/sqlite-migration-adapter';

/** Has the schema engine make a SQLite file of the first so many migrations, or of all. */
export async function byTheEngine(path: string, first?: number): Promise<void> {
  const adapters = new SqliteMigrationAdapter(path);
  const engine = await schemaEngine(adapters, lastSchema('sqlite') ?? '');
  const { migrationDirectories, ...list } = migrationList('sqlite');
  await engine.applyMigrations({
    migrationsList: { ...list, migrationDirectories: migrationDirectories.slice(0, first) },
    filters: { externalTables: [], externalEnums: [] },
  });
  engine.free();
  await adapters.close();
}

import { existsSync, readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import type { MigrationList } from '@prisma/schema-engine-wasm/schema_engine_bg';
import type { EngineName } from '@/lib/store/connection/database-url';

/** One folder a migration: its SQL, and the schema as it stands after it. All commands run in the project's folder. */
export const migrationsFolder = (engine: EngineName): string =>
  join(/*turbopackIgnore: true*/ process.cwd(), 'prisma', 'migrations', engine);

/** Names of the committed migrations, oldest first. */
export function migrationNames(engine: EngineName): string[] {
  const folder = migrationsFolder(engine);
  if (!existsSync(folder)) return [];
  return readdirSync(folder, { withFileTypes: true })
    .filter((entry) => entry.isDirectory())
    .map((entry) => entry.name)
    .sort();
}

/** The schema after the last committed migration, or null before the first. */
export function lastSchema(engine: EngineName): string | null {
  const last = migrationNames(engine).at(-1);
  return last === undefined
    ? null
    : readFileSync(join(migrationsFolder(engine), last, 'schema.prisma'), 'utf8');
}

/** SQL of a committed migration. */
export const migrationScript = (engine: EngineName, name: string): string =>
  readFileSync(join(migrationsFolder(engine), name, 'migration.sql'), 'utf8');

/** The committed migration of this script, which is all that the schema engine hands over; none for scripts of its own. */
export const migrationOf = (engine: EngineName, script: string): string | undefined =>
  migrationNames(engine).find((name) => migrationScript(engine, name) === script);

/** The committed migrations as the schema engine takes them. */
export function migrationList(engine: EngineName): MigrationList {
  return {
    baseDir: migrationsFolder(engine),
    lockfile: { path: 'migration_lock.toml', content: `provider = "${engine}"\n` },
    shadowDbInitScript: '',
    migrationDirectories: migrationNames(engine).map((name) => ({
      path: name,
      migrationFile: {
        path: 'migration.sql',
        content: { tag: 'ok', value: migrationScript(engine, name) },
      },
    })),
  };
}

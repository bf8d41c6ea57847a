import { readdir } from 'node:fs/promises';
import { join } from 'node:path';
import { database } from '@/lib/store/connection/database';
import { databaseUrl, type EngineName } from '@/lib/store/connection/database-url';

/** The database whose migrations were found complete: while this process runs they stay so. */
let complete = '';

/**
 * Whether the database answers and holds every migration of this program.
 * @throws whatever the database says where it does not answer.
 */
export async function databaseReady(): Promise<boolean> {
  const { engine } = databaseUrl();
  const address = process.env.DATABASE_URL ?? '';
  if (complete === address + engine) {
    await database().$queryRaw`SELECT 1`;
    return true;
  }
  const rows = await database().$queryRaw<{ name: string }[]>`
    SELECT "migration_name" AS "name" FROM "_prisma_migrations"
    WHERE "finished_at" IS NOT NULL AND "rolled_back_at" IS NULL`;
  const applied = new Set(rows.map(({ name }) => name));
  const whole = (await migrationsOf(engine)).every((name) => applied.has(name));
  if (whole) complete = address + engine;
  return whole;
}

/** By the working folder: the server's own files are bundled elsewhere. */
async function migrationsOf(engine: EngineName): Promise<string[]> {
  const folder = join(/* turbopackIgnore: true */ process.cwd(), 'prisma', 'migrations', engine);
  const entries = await readdir(folder, { withFileTypes: true });
  return entries.filter((entry) => entry.isDirectory()).map(({ name }) => name);
}

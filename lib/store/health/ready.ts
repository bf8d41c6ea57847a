import { database } from '@/lib/store/connection/database';
import { databaseUrl } from '@/lib/store/connection/database-url';
import { migrationNames } from '@/lib/store/migrations/migration-list';

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
  const whole = migrationNames(engine).every((name) => applied.has(name));
  if (whole) complete = address + engine;
  return whole;
}

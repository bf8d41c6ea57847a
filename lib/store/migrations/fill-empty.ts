import { createHash, randomUUID } from 'node:crypto';
import Database from 'better-sqlite3';
import { migrationNames, migrationScript } from './migration-list';

/** The schema engine's own table, letter for letter. */
const RECORD = `CREATE TABLE "_prisma_migrations" (
    "id"                    TEXT PRIMARY KEY NOT NULL,
    "checksum"              TEXT NOT NULL,
    "finished_at"           DATETIME,
    "migration_name"        TEXT NOT NULL,
    "logs"                  TEXT,
    "rolled_back_at"        DATETIME,
    "started_at"            DATETIME NOT NULL DEFAULT current_timestamp,
    "applied_steps_count"   INTEGER UNSIGNED NOT NULL DEFAULT 0
)`;

/**
 * Gives a SQLite file that holds nothing all migrations at once, and puts them on record as the schema engine does, which
 * takes longer to begin than all of them to be made. `migrate.test.ts` holds what comes of it to what the engine makes.
 * @param path of a file that is there.
 * @returns false, with nothing changed, where it holds anything.
 */
export function fillEmpty(path: string): boolean {
  const database = new Database(path, { timeout: 30_000 });
  try {
    database.pragma('synchronous = FULL');
    return database
      .transaction(() => {
        if (database.prepare('SELECT 1 FROM sqlite_master LIMIT 1').get() !== undefined) return false;
        database.exec(RECORD);
        const kept = database.prepare(
          `INSERT INTO "_prisma_migrations" ("id", "checksum", "started_at", "finished_at", "migration_name", "applied_steps_count")
            VALUES (?, ?, ?, ?, ?, 1)`,
        );
        for (const name of migrationNames('sqlite')) {
          const script = migrationScript('sqlite', name);
          const began = now();
          database.exec(script);
          const checksum = createHash('sha256').update(script).digest('hex');
          kept.run(randomUUID(), checksum, began, now(), name);
        }
        return true;
      })
      .immediate();
  } finally {
    database.close();
  }
}

/** In the engine's form. */
const now = () => new Date().toISOString().replace('Z', '+00:00');

/** A migration that was begun on a database once. */
export interface MigrationKept {
  name: string;
  finished: boolean;
  /** It failed, and was marked as undone. */
  undone: boolean;
}

/** Asks for them in the columns of `MigrationKept`, on both databases. */
export const HISTORY = `SELECT "migration_name" AS "name", "finished_at" IS NOT NULL AS "finished",
  "rolled_back_at" IS NOT NULL AS "undone" FROM "_prisma_migrations"`;

/** Marks a migration that was begun as finished; the engine writes the true time over it. @param name of a folder of ours */
export const onRecord = (name: string): string =>
  `UPDATE "_prisma_migrations" SET "finished_at" = "started_at"
    WHERE "migration_name" = '${name}' AND "finished_at" IS NULL AND "rolled_back_at" IS NULL;`;

/** Whether all of these migrations are applied, and none failed that was not undone. */
export function isNewest(history: readonly MigrationKept[], names: readonly string[]): boolean {
  const open = history.filter(({ undone }) => !undone);
  const applied = new Set(open.filter(({ finished }) => finished).map(({ name }) => name));
  return open.every(({ finished }) => finished) && names.every((name) => applied.has(name));
}

import { execFile } from 'node:child_process';
import { promisify } from 'node:util';

const run = promisify(execFile);

/**
 * Gives a database all migrations, in a process of its own: the migration engine is one to a process, and the set-up
 * of several test projects shares one.
 */
export async function migrated(url: string): Promise<void> {
  await run(process.execPath, ['lib/commands/begin.mjs', 'tests/migrating-process.ts', url]);
}

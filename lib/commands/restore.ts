/**
 * `npm run -s restore -- FILE` puts a backup in place of everything the database holds. What it held is written
 * to a file beside the backup first.
 */
import { existsSync } from 'node:fs';
import { closeStore } from '@/lib/store';
import { database } from '@/lib/store/connection/database';
import { backup } from '@/lib/store/copying/backup';
import { checkBackup, restore } from '@/lib/store/copying/restore';
import { migrate } from '@/lib/store/migrations/migrate';
import { inWords } from './reason-of';

/** A name that is not taken. */
function freeName(file: string): string {
  for (let count = 1; ; count++) {
    const path = `${file}.replaced-${count}`;
    if (!existsSync(path)) return path;
  }
}

/** Where there are jobs that would be lost. */
async function keepWhatIsThere(file: string): Promise<void> {
  await migrate();
  const jobs = await database().job.count();
  if (jobs === 0) return;
  const kept = freeName(file);
  await backup(kept);
  console.log(`What the database held (${jobs} jobs) is kept in ${kept}.`);
}

const [file, ...more] = process.argv.slice(2);
if (file === undefined || more.length > 0) {
  console.error('Name one backup: npm run -s restore -- FILE');
  process.exit(1);
}
try {
  checkBackup(file);
  await keepWhatIsThere(file);
  const { rows } = await restore(file);
  console.log(
    `Restored and compared: ${rows.get('Job') ?? 0} jobs, ${rows.get('Reading') ?? 0} readings. Start Rehang again to bring its figures up to date.`,
  );
} catch (error) {
  console.error(`Nothing was changed. ${inWords(error)}`);
  process.exitCode = 1;
} finally {
  await closeStore();
}

/**
 * Does one task with one staged file, in a process of its own: `task-program.ts check ID`. Writes the share that is
 * read to standard output, one number a line. Exit 1 with the reason on standard error.
 */
import { z } from 'zod';
import { note } from '@/lib/observe';
import { closeStore } from '@/lib/store';
import { stagedId } from './staged-file';
import { storeLargeFile } from './store-large';
import { doTask, TASKS } from './task';

try {
  const [task, id] = z.tuple([z.enum(TASKS), stagedId]).parse(process.argv.slice(2));
  let told = 0;
  const tell = (share: number) => {
    if (share < 1 && share < told + 0.01) return;
    told = share;
    process.stdout.write(`${share}\n`);
  };
  await doTask(task, id, tell, storeLargeFile);
} catch (error) {
  note.fileFailed({}, error);
  process.exitCode = 1;
} finally {
  await closeStore();
}

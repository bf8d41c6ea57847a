/** Brings one shop's figures and verdicts up to date: what the server starts behind the pages after a load. */
import { constants, setPriority } from 'node:os';
import { note } from '@/lib/observe';
import { refresh } from '@/lib/refresh/refresh';
import { closeStore } from '@/lib/store';
import { program } from './program.mjs';

// Before anything else runs beside it: pages come first, figures can wait for a moment.
setPriority(constants.priority.PRIORITY_BELOW_NORMAL);

try {
  await refresh(Number(process.argv[2]), program());
} catch (error) {
  note.refreshFailed({ shop: Number(process.argv[2]) }, error);
  process.exitCode = 1;
} finally {
  await closeStore();
}

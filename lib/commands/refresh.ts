/** Brings one shop's figures and verdicts up to date: what the server starts behind the pages after a load. */
import { setPriority } from 'node:os';
import { note } from '@/lib/observe';
import { refresh } from '@/lib/refresh/refresh';
import { closeStore } from '@/lib/store';
import { program } from './program.mjs';

/** A third of the processor where pages want it too, all of it where they do not. */
const BELOW_PAGES = 5;

setPriority(BELOW_PAGES);

try {
  await refresh(Number(process.argv[2]), program());
} catch (error) {
  note.refreshFailed({ shop: Number(process.argv[2]) }, error);
  process.exitCode = 1;
} finally {
  await closeStore();
}

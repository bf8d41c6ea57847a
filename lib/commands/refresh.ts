/** Brings one shop's figures and verdicts up to date: what the server starts behind the pages after a load. */
import { refresh } from '@/lib/refresh/refresh';
import { closeStore } from '@/lib/store';
import { program } from './program.mjs';

try {
  await refresh(Number(process.argv[2]), program());
} catch (error) {
  console.error('Figures could not be brought up to date:', error);
  process.exitCode = 1;
} finally {
  await closeStore();
}

/**
 * Makes one scheduled report that was claimed, from figures that are up to date: `scheduled-report.ts SHOP REPORT`,
 * started by the server when it is due.
 */
import { note } from '@/lib/observe';
import { refresh } from '@/lib/refresh/refresh';
import { makeReport } from '@/lib/schedule';
import { closeStore } from '@/lib/store';
import { program } from './program.mjs';

const [shop, report] = [Number(process.argv[2]), Number(process.argv[3])];
const start = performance.now();
try {
  await refresh(shop, program());
  if (await makeReport(shop, report))
    note.reportMade({ shop, report, seconds: (performance.now() - start) / 1000 });
} catch (error) {
  note.reportFailed({ shop, report }, error);
  process.exitCode = 1;
} finally {
  await closeStore();
}

/**
 * `npm run -s load -- FILE…` stores measurement files, each all or nothing, and brings the figures up to date.
 * Exit 0, or 1 where a file was refused or could not be stored; the other files named are stored all the same.
 */
import { stat } from 'node:fs/promises';
import { basename } from 'node:path';
import { parseArgs } from 'node:util';
import { faultList } from '@/lib/measure';
import { refresh } from '@/lib/refresh/refresh';
import { closeStore, sheetBook, type Shop } from '@/lib/store';
import { migrate } from '@/lib/store/migrations/migrate';
import { getReady, loadFile } from '@/lib/store/reader';
import { summaryLines } from './load-summary';
import { program } from './program.mjs';
import { shopNamed } from './shop-named';
import { inWords, reasonOf, Refused } from './reason-of';

const USAGE = `npm run -s load -- FILE.csv [FILE.csv …] [--shop NAME]

Stores measurement files in the shop’s database. Of several shops, --shop names the one.`;

const say = (line: string) => console.log(line);

/** Milliseconds between two lines of progress, and before the first. */
const EVERY = 2_000;

/** Says how much is read or stored of a file that takes longer than a moment. */
function progress(what: 'read' | 'stored', tell: (line: string) => void): (share: number) => void {
  let last = Date.now();
  return (share) => {
    if (Date.now() < last + EVERY || share >= 1) return;
    last = Date.now();
    tell(`  ${Math.floor(share * 100)} % ${what} …`);
  };
}

async function load(path: string, shop: Shop): Promise<void> {
  const name = basename(path);
  const { size: bytes } = await stat(path);
  const file = { path, name, bytes, timeZone: shop.timeZone, book: await sheetBook(shop.id) };
  const { saved, faults, summary } = await loadFile(
    shop.id,
    file,
    { person: null, via: 'command' },
    { read: progress('read', say), stored: progress('stored', say) },
  );
  if (saved === null) throw new Refused(faultList(faults).join('\n'));
  for (const line of summaryLines(summary)) say(line);
  const { added, alreadyThere, jobs, newJobs, newSetups } = saved;
  say(
    `  Stored: ${added} readings new, ${alreadyThere} there already; ${jobs.length} jobs changed (${newJobs} new), ${newSetups} new setups.`,
  );
}

async function loadAll(paths: readonly string[], name: string | undefined): Promise<number> {
  if (paths.length === 0) {
    console.error(`Name at least one measurement file.\n\n${USAGE}`);
    return 1;
  }
  await getReady(paths);
  await migrate();
  const shop = await shopNamed(name);
  let failed = 0;
  for (const path of paths) {
    try {
      await load(path, shop);
    } catch (error) {
      failed += 1;
      console.error(`${path} is refused; nothing of it was stored.\n${reasonOf(error, path)}`);
    }
  }
  try {
    await refresh(shop.id, program(), say);
  } catch (error) {
    failed += 1;
    console.error(
      `What was stored stays, but the figures could not be brought up to date. ${inWords(error)}`,
    );
  }
  return failed === 0 ? 0 : 1;
}

try {
  const { values, positionals } = parseArgs({
    allowPositionals: true,
    options: { shop: { type: 'string' } },
  });
  process.exitCode = await loadAll(positionals, values.shop);
} catch (error) {
  console.error(inWords(error));
  process.exitCode = 1;
} finally {
  await closeStore();
}

/**
 * Makes the database ready to serve: migrated, with the demo shop where it is empty (not with `--own`), its figures
 * up to date. Says how the first manager comes in where nobody can sign in yet.
 */
import { hasAccounts, origin, setUpKey } from '@/lib/identity';
import { closeStore, countJobs, getShop, listShops } from '@/lib/store';
import { databaseUrl } from '@/lib/store/connection/database-url';
import { migrate } from '@/lib/store/migrations/migrate';
import { refresh } from '@/lib/refresh/refresh';
import { loadDemo } from './load-demo';
import { program } from './program.mjs';
import { inWords } from './reason-of';

const say = (line: string) => console.log(line);

try {
  const url = databaseUrl();
  const applied = await migrate();
  if (applied.length > 0) say(`Database ready${url.engine === 'sqlite' ? ` at ${url.path}` : ''}.`);
  const shop = await getShop();
  const demo = !process.argv.includes('--own');
  if (demo && (await countJobs(shop.id)) === 0 && !(await hasAccounts())) await loadDemo(shop.id, say);
  for (const { id } of await listShops()) await refresh(id, program(), say);
  if (!(await hasAccounts()))
    say(`Nobody can sign in yet. Set up the shop and its manager: ${origin()}/welcome?key=${setUpKey()}`);
} catch (error) {
  console.error(inWords(error));
  process.exitCode = 1;
} finally {
  await closeStore();
}

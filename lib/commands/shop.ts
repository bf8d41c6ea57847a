/**
 * `npm run -s shop -- NAME --manager CODE [--zone ZONE]` adds a shop to the database and prints the link by which its
 * manager comes in. Of a shop that is there it makes a new link: for a manager who is locked out.
 */
import { parseArgs } from 'node:util';
import { origin } from '@/lib/identity';
import { addShop, closeStore, listShops, savePeople } from '@/lib/store';
import { invite } from '@/lib/store/accounts';
import { migrate } from '@/lib/store/migrations/migrate';
import { inWords } from './reason-of';

const USAGE = `npm run -s shop -- NAME --manager CODE [--zone ZONE]

Adds a shop and prints the link by which its manager comes in; of a shop that is there, only a new link.`;

const BY_COMMAND = { person: null, via: 'command' } as const;

async function run(): Promise<number> {
  const { values, positionals } = parseArgs({
    allowPositionals: true,
    options: { manager: { type: 'string' }, zone: { type: 'string', default: 'UTC' } },
  });
  const [name] = positionals;
  const { manager, zone } = values;
  if (name === undefined || manager === undefined) {
    console.error(`Name the shop and the code of its manager.\n\n${USAGE}`);
    return 1;
  }
  await migrate();
  const known = (await listShops()).find((shop) => shop.name === name);
  const shop = known ?? (await addShop(name, zone));
  if (known === undefined)
    await savePeople(shop.id, [{ code: manager, name: '', role: 'manager', active: true }], BY_COMMAND);
  const token = await invite(shop.id, manager, BY_COMMAND);
  console.log(known === undefined ? `${name} is added.` : `${name} is there.`);
  console.log(`${manager} comes in by this link, once, within three days: ${origin()}/invitation/${token}`);
  return 0;
}

try {
  process.exitCode = await run();
} catch (error) {
  console.error(inWords(error));
  process.exitCode = 1;
} finally {
  await closeStore();
}

import { statSync } from 'node:fs';
import { addShop, closeStore, getShop, sheetBook } from '@/lib/store';
import { migrate } from '@/lib/store/migrations/migrate';
import { getReady, loadFile } from '@/lib/store/reader';

/**
 * What `npm run load` does with one file, without the figures that follow behind the pages: `FILE [SHOP]`, where a shop
 * that is named is made beside those of the database.
 */
const [path = '', name] = process.argv.slice(2);
await getReady([path]);
await migrate();
const { id, timeZone } = name === undefined ? await getShop() : await addShop(name, 'UTC');
const of = { path, name: 'group.csv', bytes: statSync(path).size, timeZone, book: await sheetBook(id) };
const nobody = { person: null, via: 'command' } as const;
const { saved } = await loadFile(id, of, nobody, { read: () => undefined, stored: () => undefined });
if (saved === null) throw new Error('The file of the bench is refused.');
await closeStore();

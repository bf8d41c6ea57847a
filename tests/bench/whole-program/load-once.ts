import { statSync } from 'node:fs';
import { addShop, closeStore, getShop, sheetBook } from '@/lib/store';
import { migrate } from '@/lib/store/migrations/migrate';
import { saveFileReadings, withFile } from '@/lib/store/reader';
import { namedFile } from './named-file';

/**
 * What `npm run load` does with one file, without the figures that follow behind the pages: `FILE [SHOP]`, where a shop
 * that is named is made beside those of the database.
 */
const [path = '', name] = process.argv.slice(2);
await migrate();
const { id, timeZone } = name === undefined ? await getShop() : await addShop(name, 'UTC');
const of = { path, name: 'group.csv', bytes: statSync(path).size, timeZone, book: await sheetBook(id) };
await withFile(
  of,
  () => undefined,
  async ({ readings }) => {
    if (readings === null) throw new Error('The file of the bench is refused.');
    const file = namedFile('group.csv', readings.size);
    await saveFileReadings(id, readings, file, { person: null, via: 'command' });
  },
);
await closeStore();

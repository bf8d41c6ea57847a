import { createReadStream } from 'node:fs';
import { tabulateMeasurementFile } from '@/lib/measure';
import { closeStore, getShop, saveTable } from '@/lib/store';
import { migrate } from '@/lib/store/migrations/migrate';
import { namedFile } from './named-file';

/** What `npm run load` does with one file, without the figures that follow behind the pages. */
const [path = ''] = process.argv.slice(2);
await migrate();
const { readings } = await tabulateMeasurementFile(createReadStream(path), { name: 'group.csv' });
if (readings === null) throw new Error('The file of the bench is refused.');
const file = namedFile('group.csv', readings.size);
await saveTable((await getShop()).id, readings, file, { person: null, via: 'command' });
await closeStore();

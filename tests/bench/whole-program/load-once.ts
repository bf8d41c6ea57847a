import { createReadStream } from 'node:fs';
import { readMeasurementFile } from '@/lib/measure';
import { closeStore, getShop, saveReadings } from '@/lib/store';
import { migrate } from '@/lib/store/migrations/migrate';
import { namedFile } from './named-file';

/** What `npm run load` does with one file, without the figures that follow behind the pages. */
const [path = ''] = process.argv.slice(2);
await migrate();
const { readings, faults } = await readMeasurementFile(createReadStream(path), { name: 'group.csv' });
if (faults.length > 0) throw new Error('The file of the bench is refused.');
const file = namedFile('group.csv', readings.length);
await saveReadings((await getShop()).id, readings, file, { person: null, via: 'command' });
await closeStore();

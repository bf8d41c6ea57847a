/**
 * Run as a process of its own: stores `jobs` jobs of the regular shop, a file a job, after the prefix given,
 * and prints the number of each job once it is acknowledged. Or restores the backup that is given instead of a
 * prefix.
 */
import { getShop, saveReadings } from '@/lib/store';
import { restore } from '@/lib/store/copying/restore';
import { BY_COMMAND, fileNamed, regularShop } from './invented-readings';

const [prefix = '', jobs = '1', how] = process.argv.slice(2);
const shop = await getShop();
const readings = regularShop(Number(jobs)).map((reading) => ({ ...reading, job: `${prefix}${reading.job}` }));
console.log('ready');
if (how === 'restore') {
  await restore(prefix);
  console.log('all');
} else if (how === 'at-once') {
  await saveReadings(shop.id, readings, fileNamed(prefix), BY_COMMAND);
  console.log('all');
} else {
  const numbers = [...new Set(readings.map((reading) => reading.job))];
  for (const number of numbers) {
    const own = readings.filter((reading) => reading.job === number);
    await saveReadings(shop.id, own, fileNamed(number), BY_COMMAND);
    console.log(number);
  }
}
process.exit(0);

import { readFileSync } from 'node:fs';
import { readMeasurementFile, type Reading } from '@/lib/measure';
import { followFigures } from '@/lib/refresh/follow-figures';
import { followJob } from '@/lib/refresh/follow-job';
import { refresh } from '@/lib/refresh/refresh';
import { closeStore, getShop, saveReadings } from '@/lib/store';
import { migrate } from '@/lib/store/migrations/migrate';
import { namedFile } from './named-file';

/**
 * A shop with its history, then one more reading at a time: milliseconds of processor until it is stored, until rollup,
 * verdict and what was foretold follow, and until every figure and answer does, behind the pages: `FILE RUNS`. In the
 * first of a process code has yet to be compiled, which a process that serves does once.
 */
const [path = '', runs = '11'] = process.argv.slice(2);
/** Any run of multiples of it lies evenly over the history. */
const GOLDEN = (Math.sqrt(5) - 1) / 2;
await migrate();
const shop = (await getShop()).id;
const { readings } = await readMeasurementFile([readFileSync(path)], { name: 'history.csv' });
const actor = { person: null, via: 'command' } as const;
await saveReadings(shop, readings, namedFile('history', readings.length), actor);
await refresh(shop, 'bench');
const heights = readings.filter(({ quantity }) => quantity === 'height');
const work = ({ user, system }: NodeJS.CpuUsage): number => (user + system) / 1000;
const stored: number[] = [];
const followed: number[] = [];
const figured: number[] = [];
for (let run = 0; run < Number(runs); run++) {
  const one = heights[Math.floor(heights.length * ((run * GOLDEN) % 1))];
  if (one === undefined) break;
  const again: Reading = { ...one, repeat: 900 + run, takenAt: one.takenAt + 1000 };
  const start = process.cpuUsage();
  await saveReadings(shop, [again], namedFile(`one ${run}`, 1), actor);
  const saving = work(process.cpuUsage(start));
  const after = process.cpuUsage();
  await followJob(shop, one.job, 'bench');
  const following = work(process.cpuUsage(after));
  const then = process.cpuUsage();
  // As the serving process does; where it is due to learn instead, that is what figures take.
  if (!(await followFigures(shop, [one.job], 1, 'bench'))) await refresh(shop, 'bench');
  stored.push(saving);
  followed.push(following);
  figured.push(work(process.cpuUsage(then)));
}
await closeStore();
console.log(JSON.stringify({ readings: readings.length, stored, followed, figured }));

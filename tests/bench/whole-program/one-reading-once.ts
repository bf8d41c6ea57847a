import { readFileSync } from 'node:fs';
import { readMeasurementFile, type Reading } from '@/lib/measure';
import { readFit } from '@/lib/refresh/stored-fit';
import { followRounds, refresh } from '@/lib/refresh/refresh';
import { updateOutcomes } from '@/lib/refresh/update-outcomes';
import { closeStore, getShop, saveReadings } from '@/lib/store';
import { migrate } from '@/lib/store/migrations/migrate';
import { namedFile } from './named-file';

/**
 * A shop with its history, then one more reading at a time: milliseconds of processor until it is stored, and until
 * rollup, verdict and what was foretold follow. The first of a process is told apart: code has yet to be compiled.
 */
const [path = '', runs = '11'] = process.argv.slice(2);
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
for (let run = 0; run < Number(runs); run++) {
  const one = heights[Math.floor((heights.length * (run + 0.5)) / Number(runs))];
  if (one === undefined) break;
  const again: Reading = { ...one, repeat: 900 + run, takenAt: one.takenAt + 1000 };
  const start = process.cpuUsage();
  await saveReadings(shop, [again], namedFile(`one ${run}`, 1), actor);
  const saving = work(process.cpuUsage(start));
  const after = process.cpuUsage();
  await updateOutcomes(shop);
  const fit = await readFit(shop);
  if (fit !== null) await followRounds(shop, fit);
  stored.push(saving);
  followed.push(work(process.cpuUsage(after)));
}
await closeStore();
console.log(JSON.stringify({ readings: readings.length, stored, followed }));

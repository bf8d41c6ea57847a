/** Corrects one reading again and again, until it is killed. */
import { correctReading } from '@/lib/store';

const [shop, place] = process.argv.slice(2).map((text) => JSON.parse(text) as unknown) as [
  number,
  Omit<Parameters<typeof correctReading>[1], 'value' | 'reason'>,
];
console.log('ready');
for (let step = 1; ; step += 1)
  await correctReading(
    shop,
    { ...place, value: 300 + step / 8, reason: 'again' },
    { person: 'T0', via: 'page' },
  );

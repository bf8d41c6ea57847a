import { createWriteStream } from 'node:fs';
import { Readable } from 'node:stream';
import { pipeline } from 'node:stream/promises';
import { measurementFileLines } from '@/lib/measure';
import { generateGroup } from '@/seed';

/** Readings of a job of the generated group, as a rule. */
const A_JOB = 52;

/** Writes the measurement file of one invented shop with about so many readings; another seed is another shop. */
export async function writeGroup(path: string, readings: number, seed = 7): Promise<void> {
  const jobs = Math.round(readings / A_JOB);
  // A shop has room for 4,500 jobs in ten years; more come from several shops, read as one.
  const shops = Math.ceil(jobs / 4_000);
  const plan = { shops, jobs, technicians: 8 * shops, seed };
  let first = true;
  async function* lines() {
    for await (const { readings: batch } of generateGroup(plan)) {
      const [header = '', ...rest] = measurementFileLines(batch);
      yield (first ? header : '') + rest.join('');
      first = false;
    }
  }
  await pipeline(Readable.from(lines()), createWriteStream(path));
}

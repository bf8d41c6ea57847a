import { createWriteStream } from 'node:fs';
import { Readable } from 'node:stream';
import { pipeline } from 'node:stream/promises';
import { measurementFileLines } from '@/lib/measure';
import { generateGroup } from '@/seed';

/** Readings of a job of the generated group, as a rule: of a million, 20,000 jobs or 12,000. */
const A_JOB = { brief: 52, usual: 84 };

export interface GroupFile {
  readings: number;
  /** How much is read in a job. */
  reading?: keyof typeof A_JOB;
  /** Another is another shop. */
  seed?: number;
}

/** Writes the measurement file of one invented shop with about so many readings. */
export async function writeGroup(
  path: string,
  { readings, reading = 'brief', seed = 7 }: GroupFile,
): Promise<void> {
  const jobs = Math.round(readings / A_JOB[reading]);
  // A shop has room for 4,500 jobs in ten years; more come from several shops, read as one.
  const shops = Math.ceil(jobs / 4_000);
  const plan = { shops, jobs, technicians: 8 * shops, seed, reading };
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

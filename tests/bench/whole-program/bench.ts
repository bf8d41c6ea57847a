import { existsSync, mkdtempSync, readFileSync, rmSync, statSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { z } from 'zod';
import { postgresqlPrograms } from '@/tests/postgresql/programs';
import { startServer, type Server } from '@/tests/postgresql/server';
import { onPostgresql } from '../on-postgresql';
import { measure, runProcess } from '../run-process';
import { middleOf, spread } from '../spread';
import { timed, timedOurs, type Timed } from '../timed';
import { writeGroup } from './write-group';

type Say = (line: string) => void;

/** Seconds aimed at for the report, on two cores and 1 GB, where a million readings are some 12,000 jobs. */
const SIZES = [
  { readings: 10_000, runs: 3, aim: null, long: false },
  { readings: 100_000, runs: 3, aim: 8, long: false },
  { readings: 1_000_000, runs: 1, aim: 60, long: true },
] as const;

/** Milliseconds of work aimed at for one new reading. */
const ONE_READING_AIM = 50;
/**
 * So many are stored before those that count: a process that serves has compiled its code, of which some is compiled until
 * about here. Then so many. Those after `EARLY` are told beside them.
 */
const WARM_UP = 160;
const EARLY = 40;
const COUNTED = 20;

const OneReading = z.object({
  readings: z.number(),
  stored: z.array(z.number()),
  followed: z.array(z.number()),
  figured: z.array(z.number()),
});

/** The commands a person runs, from start to end in fresh processes, on files of an invented group of shops. */
export async function benchWholeProgram(
  say: Say,
  { long, small, engines }: { long: boolean; small: boolean; engines: readonly string[] },
): Promise<void> {
  const folder = mkdtempSync(join(tmpdir(), 'rehang-bench-'));
  const wanted = engines.includes('PostgreSQL');
  const programs = wanted ? postgresqlPrograms() : null;
  const postgresql = programs === null ? null : await startServer(programs);
  if (wanted && postgresql === null) say('PostgreSQL is not installed: what is stored in it is left out.');
  try {
    for (const { readings, runs, aim, long: takesLong } of SIZES) {
      if (small && readings > 10_000) continue;
      const title = `${readings.toLocaleString('en')} readings`;
      if (takesLong && !long) {
        say(`${title}: left out, since it takes minutes; npm run bench -- --long`);
        continue;
      }
      const file = join(folder, `${readings}.csv`);
      await writeGroup(file, { readings });
      say(`${title} (${(statSync(file).size / 1e6).toFixed(1)} MB)`);
      const fewer = join(folder, `${readings}-in-fewer-jobs.csv`);
      await writeGroup(fewer, { readings, reading: 'usual' });
      await benchReport(fewer, runs, aim, say);
      await benchReport(file, 1, null, say);
      await benchLoad(file, folder, runs, say);
      if (postgresql !== null) await benchLoadOn(postgresql, file, runs, say);
      if (takesLong) continue;
      await benchOneReading(file, `file:${join(folder, `one-${readings}.db`)}`, '', say);
      if (postgresql !== null) await benchOneReadingOn(postgresql, file, readings, say);
    }
  } finally {
    await postgresql?.stop();
    rmSync(folder, { recursive: true });
  }
}

async function repeat(times: number, run: (index: number) => Promise<Timed>): Promise<Timed[]> {
  const all: Timed[] = [];
  for (let index = 0; index < times; index++) all.push(await run(index));
  const failed = all.find(({ code }) => code !== 0);
  if (failed !== undefined) throw new Error(`A program under measurement ended with ${failed.code}.`);
  return all;
}

/** From start to end, learning included. */
async function benchReport(file: string, runs: number, aim: number | null, say: Say): Promise<void> {
  const all = await repeat(runs, () => timedOurs('lib/commands/report.ts', [file]));
  const wanted = aim === null ? '' : `, aim ${aim} s: ${ratio(middleOf(seconds(all)) / aim)} of it`;
  const jobs = countJobs(file).toLocaleString('en');
  say(
    `  report of ${jobs} jobs`.padEnd(30) +
      `${spread(seconds(all))} s, ${spread(work(all))} s of processor, ${megabytes(all)} MB at most${wanted}`,
  );
}

/** Loading with all that the store keeps of it, beside the sqlite3 shell's import of the same lines into a bare table. */
async function benchLoad(file: string, folder: string, runs: number, say: Say): Promise<void> {
  const lines = countLines(file);
  const ours = await repeat(runs, (index) =>
    timedOurs('tests/bench/whole-program/load-once.ts', [file], {
      DATABASE_URL: `file:${join(folder, `load-${lines}-${index}.db`)}`,
    }),
  );
  const speed = lines / middleOf(seconds(ours));
  const size = statSync(join(folder, `load-${lines}-0.db`)).size;
  say(
    `  load, figures left out      ${spread(seconds(ours))} s, ${spread(work(ours))} s of processor, ${Math.round(speed).toLocaleString('en')} lines a second, ${megabytes(ours)} MB at most; ${(size / lines).toFixed(0)} bytes a reading`,
  );
  if ((await runProcess('sqlite3', ['--version'])) === null) {
    say('  sqlite3 is not installed: its import is left out.');
    return;
  }
  const theirs = await repeat(runs, (index) => {
    const database = join(folder, `import-${lines}-${index}.db`);
    if (existsSync(database)) rmSync(database);
    return timed('sqlite3', [database], { input: `.import --csv ${file} readings\n` });
  });
  say(
    `  sqlite3 .import             ${spread(seconds(theirs), 2)} s: ours takes ${ratio(middleOf(seconds(ours)) / middleOf(seconds(theirs)))} times as long`,
  );
}

/** The same load into PostgreSQL, which the processor time of our process leaves out: it works beside it. */
async function benchLoadOn(server: Server, file: string, runs: number, say: Say): Promise<void> {
  const lines = countLines(file);
  const names = Array.from({ length: runs }, (_, index) => `load_${lines}_${index}`);
  for (const name of names) await onPostgresql(server.address, 'postgres', `CREATE DATABASE "${name}"`);
  const all = await repeat(runs, (index) =>
    timedOurs('tests/bench/whole-program/load-once.ts', [file], {
      DATABASE_URL: `${server.address}/${names[index] ?? ''}`,
    }),
  );
  const size = Size.parse(
    await onPostgresql(
      server.address,
      names[0] ?? '',
      'SELECT pg_database_size(current_database())::float8 AS "size"',
    ),
  )[0].size;
  say(
    `  load into PostgreSQL        ${spread(seconds(all))} s, ${spread(work(all))} s of our processor, ${megabytes(all)} MB at most; ${(size / lines).toFixed(0)} bytes a reading`,
  );
}

const Size = z.tuple([z.object({ size: z.number() })]);

/** What a server does for it is beside what our process takes, too. */
async function benchOneReadingOn(server: Server, file: string, readings: number, say: Say): Promise<void> {
  const name = `one_${readings}`;
  await onPostgresql(server.address, 'postgres', `CREATE DATABASE "${name}"`);
  await benchOneReading(file, `${server.address}/${name}`, ' in PostgreSQL', say);
}

async function benchOneReading(file: string, address: string, where: string, say: Say): Promise<void> {
  const told = await measure('env', [
    `DATABASE_URL=${address}`,
    ...[process.execPath, '--import', 'tsx', 'tests/bench/whole-program/one-reading-once.ts', file],
    String(WARM_UP + COUNTED),
  ]);
  const found = OneReading.nullable().parse(told);
  const title = `  one new reading${where}`.padEnd(29);
  if (found === null) return say(`${title} failed`);
  const toldOf = (all: readonly number[], digits?: number) =>
    `${spread(all.slice(WARM_UP), digits)} ms (in the middle the first ten of a process ${middleOf(all.slice(0, 10)).toFixed(0)}, the ${EARLY + 1}st to ${EARLY + COUNTED}th ${middleOf(all.slice(EARLY, EARLY + COUNTED)).toFixed(0)})`;
  const of = ratio(middleOf(found.followed.slice(WARM_UP)) / ONE_READING_AIM);
  const ofAll = ratio(middleOf(found.figured.slice(WARM_UP)) / ONE_READING_AIM);
  say(
    `${title} from the ${WARM_UP + 1}st of a process on: stored with ${toldOf(found.stored)} of processor; rollup, verdict and proof with ${toldOf(found.followed)}, aim ${ONE_READING_AIM} ms: ${of} of it; all figures and answers behind the pages with ${toldOf(found.figured, 0)}: ${ofAll} of it`,
  );
}

const seconds = (all: readonly Timed[]): number[] => all.map((one) => one.seconds);
const work = (all: readonly Timed[]): number[] => all.map((one) => one.work ?? Number.NaN);
const megabytes = (all: readonly Timed[]): string =>
  Math.max(...all.map((one) => one.megabytes ?? Number.NaN)).toFixed(0);
const ratio = (value: number): string => value.toFixed(value < 10 ? 2 : 0);

/** A job is the first cell of its lines, the first of which names the columns. */
const countJobs = (file: string): number =>
  new Set(readFileSync(file, 'utf8').match(/^[^,\n]+(?=,)/gm)).size - 1;

function countLines(file: string): number {
  let count = 0;
  for (const byte of readFileSync(file)) if (byte === 10) count++;
  return count;
}

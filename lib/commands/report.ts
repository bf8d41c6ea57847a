import { createReadStream } from 'node:fs';
import { stat } from 'node:fs/promises';
import { basename } from 'node:path';
import { parseArgs } from 'node:util';
import { assessShopTogether, withCrew } from '@/lib/assess/crew';
import { firstReadings } from '@/lib/assess/habits';
import {
  collapse,
  faultList,
  joinFiles,
  readMeasurementFile,
  type NamedReadings,
  type Reading,
} from '@/lib/measure';
import { batchReportText } from '@/lib/reports';

const USAGE = `npm run -s report -- [--time-zone Europe/Berlin] FILE.csv [FILE.csv …]

Reads measurement files as one shop and prints the batch report as JSON. Times without an offset are read in the
time zone, UTC where none is given. A verdict is about a reading: it never says that a structure is sound.
`;

/** What a person can act on, told without a stack. */
class Refused extends Error {}

// The reader of the output may have gone, as `head` does; that is no fault of ours.
process.stdout.on('error', (error) => {
  if (!hasCode(error) || error.code !== 'EPIPE') throw error;
  process.exit(0);
});

try {
  process.exitCode = await report(process.argv.slice(2));
} catch (error) {
  if (!(error instanceof Refused)) throw error;
  note(error.message);
  process.exitCode = 1;
}

async function report(args: string[]): Promise<number> {
  const { values, positionals } = readArguments(args);
  if (values.help === true) {
    process.stdout.write(USAGE);
    return 0;
  }
  if (positionals.length === 0) throw new Refused(`Name at least one measurement file.\n\n${USAGE}`);
  const readings = joined(await readFiles(positionals, values['time-zone']));
  const jobs = collapse(readings);
  note(`${readings.length} readings of ${jobs.length} jobs. Computing …`);
  const rounds = jobs.reduce((sum, job) => sum + job.rounds.length, 0);
  const shop = await withCrew(rounds, (crew) =>
    assessShopTogether(crew, jobs, { firsts: firstReadings(readings), ...telling(jobs.length) }),
  );
  for (const piece of batchReportText(shop)) await print(piece);
  return 0;
}

/** Says now and then how far the work has come, at most once a second. */
function telling(jobs: number) {
  let told = Date.now();
  const tell = (sentence: string) => {
    if (Date.now() - told < 1000) return;
    told = Date.now();
    note(sentence);
  };
  return {
    onProgress: (done: number) => tell(`Learning from the rounds: ${Math.round(100 * done)} %.`),
    onJudged: (judged: number) => tell(`${judged} of ${jobs} jobs judged.`),
  };
}

function readArguments(args: string[]) {
  try {
    const options = { help: { type: 'boolean', short: 'h' }, 'time-zone': { type: 'string' } } as const;
    return parseArgs({ args, options, allowPositionals: true });
  } catch (error) {
    throw new Refused(`${error instanceof Error ? error.message : String(error)}\n\n${USAGE}`);
  }
}

/** Reads every file, so that what is wrong with any of them is told at once. */
async function readFiles(paths: readonly string[], timeZone: string | undefined): Promise<NamedReadings[]> {
  const files: NamedReadings[] = [];
  const refused: string[] = [];
  for (const path of paths) {
    note(`Reading ${path} …`);
    try {
      files.push({ name: path, readings: await readFile(path, timeZone) });
    } catch (error) {
      refused.push(whyUnread(path, error));
    }
  }
  if (refused.length > 0) throw new Refused(refused.join('\n\n'));
  return files;
}

async function readFile(path: string, timeZone: string | undefined): Promise<Reading[]> {
  const { size } = await stat(path);
  const zone = timeZone === undefined ? {} : { timeZone };
  const options = { name: basename(path), bytes: size, ...zone };
  const { readings, faults, summary } = await readMeasurementFile(createReadStream(path), options);
  for (const sentence of summary.notes) note(`${path}: ${sentence}`);
  if (faults.length > 0) throw new Refused(refusal(path, faultList(faults)));
  return readings;
}

/** The sentence for a file that a person can do something about; any other error is ours and is thrown on. */
function whyUnread(path: string, error: unknown): string {
  if (error instanceof Refused) return error.message;
  // A time zone that does not exist.
  if (error instanceof RangeError) return error.message;
  const code = hasCode(error) ? error.code : '';
  if (code === 'ENOENT') return `There is no file ${path}.`;
  if (code === 'EISDIR') return `${path} is a folder. Name the files in it.`;
  if (code === 'EACCES') return `${path} may not be read by this user.`;
  throw error;
}

function joined(files: readonly NamedReadings[]): Reading[] {
  const { readings, faults, repeated } = joinFiles(files);
  if (faults.length > 0) {
    const sentences = faults.map(({ name, fault }) => ({ ...fault, message: `${fault.message} (${name})` }));
    throw new Refused(refusal('Together, the files', faultList(sentences)));
  }
  if (repeated > 0) note(`${repeated} readings are in more than one file, and are counted once.`);
  return readings;
}

function refusal(what: string, faults: readonly string[]): string {
  return `${what} cannot be read; nothing was computed.\n${faults.map((fault) => `  ${fault}`).join('\n')}`;
}

async function print(piece: string): Promise<void> {
  if (process.stdout.write(piece)) return;
  await new Promise((resolve) => process.stdout.once('drain', resolve));
}

function note(sentence: string): void {
  process.stderr.write(`${sentence}\n`);
}

function hasCode(error: unknown): error is { code: string } {
  return typeof error === 'object' && error !== null && 'code' in error && typeof error.code === 'string';
}

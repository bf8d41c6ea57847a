import { createReadStream } from 'node:fs';
import { stat } from 'node:fs/promises';
import { basename } from 'node:path';
import { parseArgs } from 'node:util';
import { setFlagsFromString } from 'node:v8';
import {
  faultList,
  joinFiles,
  sharedLines,
  type ReadingTable,
  tableOf,
  tabulateMeasurementFile,
  type Reading,
} from '@/lib/measure';
import { packedReport } from '@/lib/reports';
import { assessLines, withCrew } from '@/lib/reports/together';

const USAGE = `npm run -s report -- [--time-zone Europe/Berlin] FILE.csv [FILE.csv …]

Reads measurement files as one shop and prints the batch report as JSON. Times without an offset are read in the
time zone, UTC where none is given. A verdict is about a reading: it never says that a structure is sound.
`;

/** Bytes of a round in a measurement file, as a rule. */
const A_ROUND = 2_400;

interface NamedTable {
  name: string;
  table: ReadingTable;
}

/** What a person can act on, told without a stack. */
class Refused extends Error {}

// Of a large file little is kept and much is done with soon: without this the heap doubles before it is looked through.
setFlagsFromString('--heap-growing-percent=20');

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
  const { shop, texts } = await withCrew(await aboutRounds(positionals), async (crew) => {
    // The table itself may go: what is computed rests on what the threads share of it.
    const lines = sharedLines(oneTable(await readFiles(positionals, values['time-zone'])));
    const jobs = lines.lines.jobs.all.length;
    note(`${lines.size} readings of ${jobs} jobs. Computing …`);
    // From here on little is let go of what a thread keeps: looking through it as often is a tenth of all work.
    setFlagsFromString('--heap-growing-percent=40');
    return assessLines(crew, lines, telling(jobs));
  });
  for (const piece of packedReport(shop, texts)) await print(piece);
  return 0;
}

/** How many rounds there are to judge, told from the files’ sizes: so a crew starts while they are still being read. */
async function aboutRounds(paths: readonly string[]): Promise<number> {
  const sizes = await Promise.all(
    paths.map((path) =>
      stat(path).then(
        ({ size }) => size,
        () => 0,
      ),
    ),
  );
  return sizes.reduce((sum, size) => sum + size, 0) / A_ROUND;
}

function oneTable(files: readonly NamedTable[]): ReadingTable {
  const [only] = files;
  return files.length === 1 && only !== undefined ? only.table : tableOf(joined(files));
}

/** Says now and then how far the work has come, at most once a second. */
function telling(jobs: number) {
  let told = Date.now();
  let saidJudged = false;
  const isDue = () => Date.now() - told >= 1000;
  const tell = (sentence: string) => {
    told = Date.now();
    note(sentence);
  };
  return {
    onProgress: (done: number) => {
      if (isDue()) tell(`Learning from the rounds: ${Math.round(100 * done)} %.`);
    },
    // Whoever was told of some is told of all.
    onJudged: (judged: number) => {
      if (!isDue() && !(saidJudged && judged === jobs)) return;
      saidJudged = true;
      tell(`${judged} of ${jobs} jobs judged.`);
    },
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
async function readFiles(paths: readonly string[], timeZone: string | undefined): Promise<NamedTable[]> {
  const files: NamedTable[] = [];
  const refused: string[] = [];
  for (const path of paths) {
    note(`Reading ${path} …`);
    try {
      files.push({ name: path, table: await readFile(path, timeZone) });
    } catch (error) {
      refused.push(whyUnread(path, error));
    }
  }
  if (refused.length > 0) throw new Refused(refused.join('\n\n'));
  return files;
}

async function readFile(path: string, timeZone: string | undefined): Promise<ReadingTable> {
  const { size } = await stat(path);
  const zone = timeZone === undefined ? {} : { timeZone };
  const options = { name: basename(path), bytes: size, ...zone };
  const { readings, faults, summary } = await tabulateMeasurementFile(createReadStream(path), options);
  for (const sentence of summary.notes) note(`${path}: ${sentence}`);
  if (readings === null) throw new Refused(refusal(path, faultList(faults)));
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

function joined(files: readonly NamedTable[]): Reading[] {
  const named = files.map(({ name, table }) => ({ name, readings: [...table] }));
  const { readings, faults, repeated } = joinFiles(named);
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

async function print(piece: string | Uint8Array): Promise<void> {
  if (process.stdout.write(piece)) return;
  await new Promise((resolve) => process.stdout.once('drain', resolve));
}

function note(sentence: string): void {
  process.stderr.write(`${sentence}\n`);
}

function hasCode(error: unknown): error is { code: string } {
  return typeof error === 'object' && error !== null && 'code' in error && typeof error.code === 'string';
}

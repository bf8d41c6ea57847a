import { writeFileSync } from 'node:fs';
import { describeMachine } from './machine';
import { benchPages } from './pages/bench';
import { benchVarianceComponents } from './variance-components/bench';
import { benchWholeProgram } from './whole-program/bench';

/**
 * `npm run bench [-- --long]`: the program as a whole, and our figures side by side with the peers that are installed,
 * as ratios, in one run. Every run is a fresh process. A ratio belongs to the machine and the load it was taken on.
 * `-- --program` leaves all but the program as a whole out, `-- --pages` all but the pages, `-- --small` all but the
 * smallest history, and without `--long` the largest; `-- --pages=overview,job` all but these pages, `-- --readings=50000`
 * all but a history of this length, `-- --engine=sqlite` (or `postgresql`) all but this kind of database, and
 * `-- --database=ADDRESS,…` has pages of these databases measured, which were filled before, in place of the bench's own.
 * What is said is kept in RESULTS.md, unless it is of some pages or databases alone.
 */
const said: string[] = [];
const say = (line: string) => {
  console.log(line);
  said.push(line);
};

const asked = (flag: string) => process.argv.includes(`--${flag}`);
const given = (flag: string): string | null =>
  process.argv.find((argument) => argument.startsWith(`--${flag}=`))?.slice(flag.length + 3) ?? null;
const [long, small] = [asked('long'), asked('small')];
const [only, readings] = [given('pages')?.split(',') ?? null, given('readings')];
const stored = given('database')?.split(',') ?? [];
const engines = (['SQLite', 'PostgreSQL'] as const).filter(
  (engine) => given('engine') === null || given('engine') === engine.toLowerCase(),
);
const sizes =
  readings !== null ? [Number(readings)] : small ? [10_000] : [10_000, long ? 1_000_000 : 100_000];
const pages = asked('pages') || only !== null || stored.length > 0;
say(describeMachine());
if (!pages) await benchWholeProgram(say, { long, small, engines });
if (!asked('program')) await benchPages(say, { sizes, engines, only, stored });
if (!asked('program') && !pages) await benchVarianceComponents(say, long);

if (only !== null || stored.length > 0) process.exit();
const date = new Date().toISOString().slice(0, 10);
writeFileSync(
  new URL('RESULTS.md', import.meta.url),
  `# What \`npm run bench\` said last

Written by the bench itself on ${date}. A middle stands before its spread: least to greatest. Times are from the start of a
process to its end, on the machine and under the load that the first line names.

\`\`\`text
${said.join('\n')}
\`\`\`
`,
);

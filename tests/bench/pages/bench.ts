import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { z } from 'zod';
import { build } from '@/lib/commands/build.mjs';
import { middleOf } from '../spread';
import { writeGroup } from '../whole-program/write-group';
import { serveBarePage } from './bare-page';
import { request, type Answered } from './requests';
import { finished, serving } from './serving';

const CLIENTS = 50;
const BUILD = '.next-bench';
const BEGIN = 'lib/commands/begin.mjs';
const PORTS = { bare: 3391, ours: 3392 };
/** What a page may take of a bare one, and grow by from the smallest history to the largest. */
const AIM = { bare: 3, growth: 0.2, kilobytes: 200 };

const Shop = z.object({ invitation: z.string(), technician: z.string(), job: z.string(), sheet: z.string() });
type Shop = z.infer<typeof Shop>;

/** Every kind of page with figures; those of one job, hand and sheet by one that the shop has. */
const pagesOf = ({ technician, job, sheet }: Shop): [name: string, path: string][] => [
  ['overview', '/'],
  ['jobs', '/jobs'],
  ['job', `/jobs/${job}`],
  ['evidence', `/jobs/${job}/evidence?round=after-1`],
  ['readings', `/jobs/${job}/readings`],
  ['rates', '/rates'],
  ['rates by month', `/rates?by=month&technician=${technician}`],
  ['jobs of a rate', `/rates/jobs?by=technician&group=${technician}`],
  ['signals', '/rates/signals'],
  ['what if', '/what-if'],
  ['technicians', '/technicians'],
  ['hand', `/technicians/${technician}`],
  ['training', '/training'],
  ['habits', '/habits'],
  ['habit', `/habits/low-hanger?technician=${technician}`],
  ['gauges', '/gauges'],
  ['sheets', '/sheets'],
  ['sheet', `/sheets/${sheet}`],
  ['bay', '/bay'],
  ['trials', '/trials'],
  ['calibration', '/calibration'],
  ['trace', '/settings/trace'],
];

/** Readings that one shop has at most; more are a group of shops in one database, of which one is looked at. */
const A_SHOP = 85_000;

/** Of one request. */
interface Measured {
  /** Milliseconds from asking to the last byte: median and 99th percentile. */
  middle: number;
  worst: number;
  /** ms; NaN where the system does not tell. */
  processor: number;
  kilobytes: number;
}

/** A page as it is worked out, and as it is given again while nothing was written. */
interface Page {
  anew: Measured;
  again: Measured;
}

/** Has a page made as if nobody had asked for it before. */
const ANEW = { 'Cache-Control': 'no-cache' };

/**
 * Every page of shops with short and long histories beside a bare page of the same framework, each asked for by 50
 * clients at once: medians and 99th percentiles, their ratios to the bare page, growth with the history, what is sent,
 * and what a request takes of the processor, which other work on the machine changes least. `only` names some pages.
 */
export async function benchPages(
  say: (line: string) => void,
  sizes: readonly number[],
  only: readonly string[] | null = null,
): Promise<void> {
  const folder = mkdtempSync(join(tmpdir(), 'rehang-pages-'));
  try {
    const bare = await measureBare();
    say(
      `bare page: ${told(bare)} ms (median, 99 %), ${CLIENTS} clients; ${bare.processor.toFixed(1)} ms of processor a request`,
    );
    await build(BUILD, 'pipe');
    const bySize: ReadonlyMap<string, Page>[] = [];
    for (const readings of sizes) {
      say(
        `pages at ${readings.toLocaleString('en')} readings${shopsOf(readings) > 1 ? ` of ${shopsOf(readings)} shops, one of them looked at` : ''}. Made anew: median and 99 %, ms; times the bare page's; ms of processor; kB sent. Given again, nothing being written: the same`,
      );
      const found = await measureOurs(folder, readings, only);
      for (const [name, { anew, again }] of found)
        say(
          `  ${name.padEnd(16)} ${told(anew).padStart(14)}   ${ratios(anew, bare)}   ${work(anew, bare)}   ${anew.kilobytes.toFixed(0).padStart(4)} kB   again ${told(again).padStart(8)}   ${ratios(again, bare)}   ${work(again, bare)}`,
        );
      bySize.push(found);
    }
    sayWithin(say, bySize, bare);
  } finally {
    rmSync(folder, { recursive: true });
  }
}

function sayWithin(
  say: (line: string) => void,
  bySize: readonly ReadonlyMap<string, Page>[],
  bare: Measured,
): void {
  const [first, last] = [bySize[0], bySize.at(-1)];
  if (first === undefined || last === undefined) return;
  const all = [...last];
  const within = (test: (one: Page, name: string) => boolean) =>
    `${all.filter(([name, one]) => test(one, name)).length} of ${all.length} pages`;
  const near = (which: keyof Page, what: 'middle' | 'worst' | 'processor') =>
    within((one) => one[which][what] <= AIM.bare * bare[what]);
  const told = (which: keyof Page) =>
    `${near(which, 'middle')} by the median, ${near(which, 'worst')} by the 99th percentile, ${near(which, 'processor')} by the processor`;
  say(`  within ${AIM.bare} times the bare page, made anew     ${told('anew')}`);
  say(`  within ${AIM.bare} times the bare page, given again   ${told('again')}`);
  say(
    `  at most ${AIM.kilobytes} kB sent                        ${within(({ anew }) => anew.kilobytes <= AIM.kilobytes)}`,
  );
  if (first !== last)
    say(
      `  grown by less than ${100 * AIM.growth} %                     ${within(
        ({ anew }, name) => anew.processor <= (1 + AIM.growth) * (first.get(name)?.anew.processor ?? 0),
      )} made anew, by the processor, from the smallest history to the largest`,
    );
}

async function measureBare(): Promise<Measured> {
  const bare = await serveBarePage(PORTS.bare);
  try {
    return await measurePage(`${bare.address}/`, {}, bare.seconds);
  } finally {
    await bare.stop();
  }
}

async function measureOurs(
  folder: string,
  readings: number,
  only: readonly string[] | null,
): Promise<Map<string, Page>> {
  const env = {
    DATABASE_URL: `file:${join(folder, `${readings}.db`)}`,
    REHANG_SECRET: 'of the bench, and of nothing else in the world',
    REHANG_STAGING_DIR: join(folder, 'staged'),
    REHANG_DIST_DIR: BUILD,
    NODE_ENV: 'production',
    PORT: String(PORTS.ours),
  };
  const ours = (script: string, ...args: string[]) => finished([BEGIN, script, ...args], env);
  const shops = shopsOf(readings);
  for (let index = 1; index <= shops; index++) {
    const file = join(folder, `${readings}-${index}.csv`);
    await writeGroup(file, readings / shops, 6 + index);
    await ours('tests/bench/whole-program/load-once.ts', file, ...(index === 1 ? [] : [`Shop ${index}`]));
    rmSync(file);
    await ours('lib/commands/refresh.ts', String(index));
  }
  const shop = Shop.parse(JSON.parse(await ours('tests/bench/pages/our-shop.ts')));
  const served = await serving(['lib/commands/server.mjs'], env, PORTS.ours, '/health');
  try {
    const cookie = await comeIn(served.address, shop.invitation);
    const found = new Map<string, Page>();
    for (const [name, path] of pagesOf(shop)) {
      if (only?.includes(name) === false) continue;
      const url = served.address + path;
      const anew = await measurePage(url, { cookie, ...ANEW }, served.seconds);
      found.set(name, { anew, again: await measurePage(url, { cookie }, served.seconds) });
    }
    return found;
  } finally {
    await served.stop();
  }
}

const shopsOf = (readings: number): number => Math.ceil(readings / A_SHOP);

async function measurePage(
  url: string,
  headers: Readonly<Record<string, string>>,
  seconds: () => number,
): Promise<Measured> {
  // What is compiled and cached at first use is no part of a page's time.
  await request(url, headers, { clients: 2, times: 20 });
  const before = seconds();
  const all = await request(url, headers, { clients: CLIENTS, times: 4 * CLIENTS });
  const processor = (1000 * (seconds() - before)) / all.length;
  const times = all.map(({ milliseconds }) => milliseconds).sort((a, b) => a - b);
  return {
    middle: middleOf(times),
    worst: times[Math.ceil(0.99 * times.length) - 1] ?? Number.NaN,
    processor,
    kilobytes: Math.max(...all.map(({ bytes }: Answered) => bytes)) / 1000,
  };
}

/** The cookie of a manager who came in by an invitation. */
async function comeIn(address: string, invitation: string): Promise<string> {
  const response = await fetch(`${address}/invitation/${invitation}/take`, {
    method: 'POST',
    redirect: 'manual',
    headers: { origin: address },
    body: new URLSearchParams({ signInName: 'bench', password: 'seven pins along the sill' }),
  });
  return response.headers
    .getSetCookie()
    .map((cookie) => cookie.split(';')[0] ?? '')
    .join('; ');
}

const told = ({ middle, worst }: Measured): string => `${middle.toFixed(0)}, ${worst.toFixed(0)}`;
const work = ({ processor }: Measured, bare: Measured): string =>
  `${processor.toFixed(1).padStart(5)} ms, ${(processor / bare.processor).toFixed(1)} times`;
const ratios = (one: Measured, bare: Measured): string =>
  `${(one.middle / bare.middle).toFixed(1)} and ${(one.worst / bare.worst).toFixed(1)} times`.padEnd(20);

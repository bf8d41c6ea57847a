import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { z } from 'zod';
import { build } from '@/lib/commands/build.mjs';
import { middleOf } from '../spread';
import { writeGroup } from '../whole-program/write-group';
import { serveBarePage } from './bare-page';
import { request, type Answered } from './requests';
import { finished, serving, type Served } from './serving';

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

/** A page beside a bare one that was asked for in the same seconds. */
interface Beside {
  bare: Measured;
  page: Page;
}

/** A shop that is served, and how long its history is. */
interface History {
  readings: number;
  shop: Shop;
  served: Served;
  cookie: string;
}

/**
 * Every page of shops with short and long histories beside a bare page of the same framework, each asked for by 50
 * clients at once: medians and 99th percentiles, their ratios to the bare page, growth with the history, what is sent,
 * and what a request takes of the processor, which other work on the machine changes least. All are served at the same
 * time and asked in turns, so that what else the machine does, and how long a server has run, is alike for all that is
 * compared. `only` names some pages.
 */
export async function benchPages(
  say: (line: string) => void,
  sizes: readonly number[],
  only: readonly string[] | null = null,
): Promise<void> {
  const folder = mkdtempSync(join(tmpdir(), 'rehang-pages-'));
  const servers: Served[] = [];
  try {
    await build(BUILD, 'pipe');
    const histories: History[] = [];
    for (const [index, readings] of sizes.entries()) {
      const history = await serveOurs(folder, readings, PORTS.ours + index);
      servers.push(history.served);
      histories.push(history);
    }
    const bare = await serveBarePage(PORTS.bare);
    servers.push(bare);
    const bySize = await measureAll(bare, histories, only);
    for (const [index, found] of bySize.entries()) sayPages(say, sizes[index] ?? Number.NaN, found);
    sayWithin(say, bySize);
  } finally {
    for (const server of servers) await server.stop();
    rmSync(folder, { recursive: true });
  }
}

function sayPages(say: (line: string) => void, readings: number, found: ReadonlyMap<string, Beside>): void {
  const floors = [...found.values()].map(({ bare }) => bare);
  const middle = (of: keyof Measured) => middleOf(floors.map((one) => one[of])).toFixed(1);
  say(
    `pages at ${readings.toLocaleString('en')} readings${shopsOf(readings) > 1 ? ` of ${shopsOf(readings)} shops, one of them looked at` : ''}; beside each a bare page, in the middle ${middle('middle')}, ${middle('worst')} ms (median, 99 %), ${CLIENTS} clients, ${middle('processor')} ms of processor. Made anew: median and 99 %, ms; times the bare page's; ms of processor; kB sent. Given again, nothing being written: the same`,
  );
  for (const [name, { bare, page }] of found) {
    const { anew, again } = page;
    say(
      `  ${name.padEnd(16)} ${told(anew).padStart(14)}   ${ratios(anew, bare)}   ${work(anew, bare)}   ${anew.kilobytes.toFixed(0).padStart(4)} kB   again ${told(again).padStart(8)}   ${ratios(again, bare)}   ${work(again, bare)}`,
    );
  }
}

function sayWithin(say: (line: string) => void, bySize: readonly ReadonlyMap<string, Beside>[]): void {
  const [first, last] = [bySize[0], bySize.at(-1)];
  if (first === undefined || last === undefined) return;
  const all = [...last];
  const within = (test: (one: Beside, name: string) => boolean) =>
    `${all.filter(([name, one]) => test(one, name)).length} of ${all.length} pages`;
  const near = (which: keyof Page, what: 'middle' | 'worst' | 'processor') =>
    within(({ bare, page }) => page[which][what] <= AIM.bare * bare[what]);
  const told = (which: keyof Page) =>
    `${near(which, 'middle')} by the median, ${near(which, 'worst')} by the 99th percentile, ${near(which, 'processor')} by the processor`;
  say(`  within ${AIM.bare} times the bare page, made anew     ${told('anew')}`);
  say(`  within ${AIM.bare} times the bare page, given again   ${told('again')}`);
  say(
    `  at most ${AIM.kilobytes} kB sent                        ${within(({ page }) => page.anew.kilobytes <= AIM.kilobytes)}`,
  );
  if (first !== last)
    say(
      `  grown by less than ${100 * AIM.growth} %                     ${within(
        ({ page }, name) =>
          page.anew.processor <= (1 + AIM.growth) * (first.get(name)?.page.anew.processor ?? 0),
      )} made anew, by the processor, from the smallest history to the largest`,
    );
}

async function measureAll(
  bare: Served,
  histories: readonly History[],
  only: readonly string[] | null,
): Promise<Map<string, Beside>[]> {
  const bySize = histories.map(() => new Map<string, Beside>());
  const [any] = histories;
  if (any === undefined) return bySize;
  for (const [name] of pagesOf(any.shop)) {
    if (only?.includes(name) === false) continue;
    const pages = histories.map(({ shop, served, cookie }) => ({
      url: served.address + (new Map(pagesOf(shop)).get(name) ?? ''),
      served,
      cookie,
    }));
    const [floor, ...found] = await measureInTurns([
      { url: `${bare.address}/`, headers: {}, served: bare },
      ...pages.map(({ url, served, cookie }) => ({ url, headers: { cookie, ...ANEW }, served })),
      ...pages.map(({ url, served, cookie }) => ({ url, headers: { cookie }, served })),
    ]);
    for (const [index, size] of bySize.entries()) {
      const [anew, again] = [found[index], found[index + histories.length]];
      if (floor !== undefined && anew !== undefined && again !== undefined)
        size.set(name, { bare: floor, page: { anew, again } });
    }
  }
  return bySize;
}

async function serveOurs(folder: string, readings: number, port: number): Promise<History> {
  const env = {
    DATABASE_URL: `file:${join(folder, `${readings}.db`)}`,
    REHANG_SECRET: 'of the bench, and of nothing else in the world',
    REHANG_STAGING_DIR: join(folder, 'staged'),
    REHANG_DIST_DIR: BUILD,
    NODE_ENV: 'production',
    PORT: String(port),
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
  const served = await serving(['lib/commands/server.mjs'], env, port, '/health');
  return { readings, shop, served, cookie: await comeIn(served.address, shop.invitation) };
}

const shopsOf = (readings: number): number => Math.ceil(readings / A_SHOP);

interface Asked {
  url: string;
  headers: Readonly<Record<string, string>>;
  served: Served;
}

/** Each page is asked for by all clients at once, the pages in turns, so often. */
const TURNS = 4;

async function measureInTurns(pages: readonly Asked[]): Promise<Measured[]> {
  // What is compiled and cached at first use is no part of a page's time.
  for (const { url, headers } of pages) await request(url, headers, { clients: 2, times: 60 });
  const found = pages.map(() => ({ seconds: 0, all: [] as Answered[] }));
  for (let turn = 0; turn < TURNS; turn++)
    for (const [index, { url, headers, served }] of pages.entries()) {
      const before = served.seconds();
      const answered = await request(url, headers, { clients: CLIENTS, times: CLIENTS });
      const one = found[index];
      if (one === undefined) continue;
      one.seconds += served.seconds() - before;
      one.all.push(...answered);
    }
  return found.map(({ seconds, all }) => {
    const times = all.map(({ milliseconds }) => milliseconds).sort((a, b) => a - b);
    return {
      middle: middleOf(times),
      worst: times[Math.ceil(0.99 * times.length) - 1] ?? Number.NaN,
      processor: (1000 * seconds) / all.length,
      kilobytes: Math.max(...all.map(({ bytes }) => bytes)) / 1000,
    };
  });
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

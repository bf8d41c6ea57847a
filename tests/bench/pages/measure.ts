import { middleOf } from '../spread';
import { request, type Answered } from './requests';
import type { Served } from './serving';

export const CLIENTS = 50;

/** Each page is asked for by all clients at once, the pages in turns, so often. */
const TURNS = 4;

/** Of one request. */
export interface Measured {
  /** Milliseconds from asking to the last byte: median and 99th percentile. */
  middle: number;
  worst: number;
  /** ms, of the process that serves: a database server's own is beside it. NaN where the system does not tell. */
  processor: number;
  kilobytes: number;
}

export interface Asked {
  url: string;
  headers: Readonly<Record<string, string>>;
  served: Served;
}

export async function measureInTurns(pages: readonly Asked[]): Promise<Measured[]> {
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

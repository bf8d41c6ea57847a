import type { IncomingMessage, OutgoingHttpHeaders, ServerResponse } from 'node:http';
import { collectBody } from './collect-body';

/** Seconds; what a page says of the time, and the end of a session, are late by no more. */
const KEPT_FOR = 30;
/** Bytes of all pages that are kept, and of one of them. */
const MOST = 64_000_000;
const MOST_OF_ONE = 1_000_000;

/** Their pages show what is not in the database (files and work of this process), or a secret once. */
const NEVER = /^\/(?:load|sign-in|sign-out|invitation|welcome|account)(?:[/?]|$)/;
const NEVER_WITH = 'rehang.said=';

/** Of a request; in what an answer does not depend on, requests for one page differ without need. */
const NO_MATTER = new Set([
  ...['connection', 'referer', 'x-forwarded-for', 'priority', 'upgrade-insecure-requests'],
  ...['cache-control', 'pragma', 'sec-fetch-dest', 'sec-fetch-mode', 'sec-fetch-site', 'sec-fetch-user'],
]);

interface Kept {
  status: number;
  headers: OutgoingHttpHeaders;
  body: Buffer;
  at: number;
}

/**
 * Pages that are given again, byte for byte, to who asks for the same with the same cookies, while nothing at all was
 * written in the database. So nothing has to say what a page is made from: a reading, a role that was taken away, a
 * session that was ended are all written. A page made meanwhile is kept by what the database held before.
 */
export class PagesAgain {
  readonly #kept = new Map<string, Kept>();
  #state = '';
  #bytes = 0;

  /**
   * @param stateOf a word that changes with all that is written, see `databaseState`
   * @param most bytes of all pages that are kept
   * @param now milliseconds
   */
  constructor(
    private readonly stateOf: () => Promise<string>,
    private readonly most = MOST,
    private readonly now: () => number = Date.now,
  ) {}

  /** Answers where it can; if not, the answer that is about to be made is kept. Never fails. */
  async give(request: IncomingMessage, response: ServerResponse): Promise<boolean> {
    if (!mayBeKept(request)) return false;
    let state: string;
    try {
      state = await this.stateOf();
    } catch {
      // Whoever makes the page is told by the database itself.
      return false;
    }
    if (state !== this.#state) this.#forget(state);
    const key = keyOf(request);
    const known = this.#kept.get(key);
    if (known !== undefined && this.now() - known.at < KEPT_FOR * 1000 && !wantsAnew(request)) {
      response.writeHead(known.status, { ...known.headers, 'content-length': known.body.length });
      response.end(known.body);
      return true;
    }
    collectBody(response, MOST_OF_ONE, (body) => {
      if (state === this.#state && isPage(response)) this.#keep(key, response, body);
    });
    return false;
  }

  #keep(key: string, response: ServerResponse, body: Buffer): void {
    this.#bytes += body.length - (this.#kept.get(key)?.body.length ?? 0);
    this.#kept.delete(key);
    const { connection: _, 'transfer-encoding': __, date: ___, ...headers } = response.getHeaders();
    this.#kept.set(key, { status: response.statusCode, headers, body, at: this.now() });
    for (const [oldest, { body: gone }] of this.#kept) {
      if (this.#bytes <= this.most || oldest === key) break;
      this.#kept.delete(oldest);
      this.#bytes -= gone.length;
    }
  }

  #forget(state: string): void {
    this.#kept.clear();
    this.#bytes = 0;
    this.#state = state;
  }
}

function mayBeKept({ method, url = '/', headers: { cookie = '' } }: IncomingMessage): boolean {
  return (
    method === 'GET' && cookie !== '' && !cookie.includes(NEVER_WITH) && !NEVER.test(url) && !isFile(url)
  );
}

const isFile = (url: string): boolean => url.startsWith('/_next/') || url.startsWith('/api/');

/** Somebody has the browser load the page from the ground up. */
const wantsAnew = ({ headers }: IncomingMessage): boolean =>
  headers['cache-control']?.includes('no-cache') === true;

const keyOf = ({ url, headers }: IncomingMessage): string =>
  JSON.stringify([url, ...Object.entries(headers).filter(([name]) => !NO_MATTER.has(name))]);

/** The whole page, or what a link within the program loads of it; downloads are made anew. */
function isPage(response: ServerResponse): boolean {
  const type = String(response.getHeader('content-type') ?? '');
  return (
    response.statusCode === 200 &&
    !response.hasHeader('set-cookie') &&
    (type.startsWith('text/html') || type.startsWith('text/x-component'))
  );
}

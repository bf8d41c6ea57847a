import { randomBytes } from 'node:crypto';
import type { IncomingMessage, ServerResponse } from 'node:http';
import { LastUsed } from '@/lib/memory';
import { collectBody } from './collect-body';
import { PageWithNonce } from './page-with-nonce';
import { wholeOf } from './send-whole';

/** Seconds; what a page says of the time, and the end of a session, are late by no more. */
const KEPT_FOR = 30;
/** Bytes of all pages that are kept, unpacked, and of one of them as it is sent. */
const MOST = 64_000_000;
const MOST_OF_ONE = 1_000_000;

/** They are no pages, or show what is not in the database (files and work of this process), or a secret once. */
const NEVER = /^\/(?:_next|api|load|sign-in|sign-out|invitation|welcome|account)(?:[/?]|$)/;
const NEVER_WITH = 'rehang.said=';

/** Of a request; in what an answer does not depend on, requests for one page differ without need. */
const NO_MATTER = new Set([
  ...['connection', 'referer', 'x-forwarded-for', 'priority', 'upgrade-insecure-requests'],
  ...['cache-control', 'pragma', 'sec-fetch-dest', 'sec-fetch-mode', 'sec-fetch-site', 'sec-fetch-user'],
]);

interface Kept {
  page: PageWithNonce;
  at: number;
}

/**
 * Pages that are given again, the same but for a nonce of their own, to who asks for the same with the same cookies,
 * while nothing at all was written in the database. So nothing has to say what a page is made from: a reading, a role
 * that was taken away, a session that was ended are all written. A page made meanwhile is kept by what the database
 * held before.
 */
export class PagesAgain {
  readonly #kept: LastUsed<Kept>;
  #state = '';

  /**
   * @param stateOf a word that changes with all that is written, see `databaseState`
   * @param most bytes of all pages that are kept
   * @param now milliseconds
   */
  constructor(
    private readonly stateOf: () => Promise<string>,
    most = MOST,
    private readonly now: () => number = Date.now,
  ) {
    this.#kept = new LastUsed(most, ({ page }) => page.size);
  }

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
    if (state !== this.#state) this.#kept.clear();
    this.#state = state;
    const key = keyOf(request);
    const known = this.#kept.get(key);
    if (known !== undefined && this.now() - known.at < KEPT_FOR * 1000 && !wantsAnew(request)) {
      const { headers, body } = known.page.with(randomBytes(16).toString('base64'));
      response.writeHead(200, headers);
      response.end(body);
      return true;
    }
    collectBody(response, MOST_OF_ONE, (body) => {
      if (isPage(response)) void this.#keep(key, state, response, body).catch(() => undefined);
    });
    return false;
  }

  async #keep(key: string, state: string, response: ServerResponse, body: Buffer): Promise<void> {
    const at = this.now();
    const {
      connection: _,
      'transfer-encoding': __,
      date: ___,
      etag: ____,
      ...headers
    } = response.getHeaders();
    const page = await PageWithNonce.of(headers, body, wholeOf(response));
    if (page === null || state !== this.#state) return;
    this.#kept.set(key, { page, at });
  }
}

function mayBeKept({ method, url = '/', headers: { cookie = '' } }: IncomingMessage): boolean {
  return method === 'GET' && cookie !== '' && !cookie.includes(NEVER_WITH) && !NEVER.test(url);
}

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

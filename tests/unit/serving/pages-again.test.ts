import { createServer, type IncomingMessage, type ServerResponse } from 'node:http';
import type { AddressInfo } from 'node:net';
import { gzipSync } from 'node:zlib';
import { afterAll, beforeAll, beforeEach, describe, expect, it, vi } from 'vitest';
import { PagesAgain } from '@/lib/serving/pages-again';
import { pieceInPlace } from '@/lib/serving/piece-place';
import { sendWhole } from '@/lib/serving/send-whole';

let state = 'a';
let now = 0;
let made = 0;
let pages: PagesAgain;
let make: (request: IncomingMessage, response: ServerResponse) => void;

const html = (text: string) => (_: IncomingMessage, response: ServerResponse) => {
  response.setHeader('Content-Type', 'text/html; charset=utf-8');
  response.write(`<p>${text}`);
  response.end(` ${++made}</p>`);
};

const server = createServer((request, response) => {
  void pages.give(request, response).then((given) => {
    if (!given) make(request, response);
  });
});
beforeAll(() => new Promise<void>((resolve) => void server.listen(0, '127.0.0.1', resolve)));
afterAll(() => new Promise((resolve) => void server.close(resolve)));
beforeEach(() => {
  [state, now, made] = ['a', 0, 0];
  pages = new PagesAgain(
    () => Promise.resolve(state),
    10_000,
    () => now,
  );
  make = html('page');
});

const ask = async (path = '/jobs', headers: Record<string, string> = {}, method = 'GET') => {
  const { port } = server.address() as AddressInfo;
  const response = await fetch(`http://127.0.0.1:${port}${path}`, {
    method,
    headers: { cookie: 'session=manager', ...headers },
    redirect: 'manual',
  });
  const { date: _, 'transfer-encoding': __, ...rest } = Object.fromEntries(response.headers);
  return { status: response.status, headers: rest, text: await response.text() };
};
/** How often the page was made for these. */
const madeFor = async (...requests: Parameters<typeof ask>[]) => {
  for (const request of requests) await ask(...request);
  return made;
};

describe('a page that was made', () => {
  it('is given again to the letter, its headers too, but for a nonce of its own, while nothing is written', async () => {
    const page = gzipSync('<script nonce="first+/=">größer</script><p nonce="first+/=">');
    make = (_request, response) => {
      response.setHeader('Content-Security-Policy', "script-src 'self' 'nonce-first+/='");
      response.setHeader('Content-Encoding', 'gzip');
      response.setHeader('Content-Type', 'text/html');
      response.setHeader('X-Frame-Options', 'DENY');
      response.setHeader('Content-Length', page.length);
      made++;
      response.end(page);
    };
    const nonces = new Set<string>();
    const plainly = ({
      headers: { 'content-length': _, ...headers },
      ...answer
    }: Awaited<ReturnType<typeof ask>>) => {
      const nonce = /'nonce-([^']+)'/.exec(headers['content-security-policy'] ?? '')?.[1] ?? '';
      nonces.add(nonce);
      return JSON.stringify({ headers, ...answer }).replaceAll(nonce, 'NONCE');
    };
    const first = plainly(await ask());
    expect(first.match(/NONCE/g)).toHaveLength(3);
    // It is unpacked before it is kept.
    await vi.waitFor(async () => {
      const before = made;
      await ask();
      expect(made).toBe(before);
    });
    const before = made;
    expect(plainly(await ask())).toBe(first);
    expect(plainly(await ask())).toBe(first);
    expect(made).toBe(before);
    expect(nonces.size).toBe(3);
  });

  it('is given again with its pieces, those that are packed already too', async () => {
    const piece = '<b>größer</b>'.repeat(300);
    make = (request, response) => {
      sendWhole(request, response)?.push(piece);
      response.setHeader('Content-Security-Policy', "script-src 'nonce-first+/='");
      response.setHeader('Content-Type', 'text/html');
      made++;
      response.end(`<i nonce="first+/=">${pieceInPlace(0)}</i><p nonce="first+/=">`);
    };
    for (let time = 0; time < 3; time++) {
      await ask('/jobs', { 'cache-control': 'no-cache' });
      const before = made;
      const { headers, text } = await ask();
      const nonce = /'nonce-([^']+)'/.exec(headers['content-security-policy'] ?? '')?.[1] ?? '';
      expect(text).toBe(`<i nonce="${nonce}">${piece}</i><p nonce="${nonce}">`);
      expect(nonce).not.toBe('first+/=');
      expect(made).toBe(before);
    }
  });

  it('is made anew once anything was written', async () => {
    await ask();
    state = 'b';
    expect((await ask()).text).toBe('<p>page 2</p>');
    expect((await ask()).text).toBe('<p>page 2</p>');
  });

  it('is not kept if something was written while it was made', async () => {
    make = (request, response) => {
      state = 'b';
      html('page')(request, response);
    };
    await ask();
    expect((await ask()).text).toBe('<p>page 2</p>');
  });

  it('is nobody else’s: not with other cookies, in another language, or from another address of the shop', async () => {
    expect(
      await madeFor(
        ['/jobs'],
        ['/jobs', { cookie: 'session=technician' }],
        ['/jobs', { 'accept-language': 'de' }],
        ['/jobs', { 'x-forwarded-host': 'elsewhere.example' }],
        ['/jobs', { rsc: '1' }],
        ['/jobs?page=2'],
      ),
    ).toBe(6);
  });

  it('is the same wherever the reader came from', async () => {
    expect(await madeFor(['/jobs', { referer: 'http://a.example/' }], ['/jobs'])).toBe(1);
  });

  it('is made anew for whoever loads it from the ground up, and after half a minute', async () => {
    await ask();
    expect((await ask('/jobs', { 'cache-control': 'no-cache' })).text).toBe('<p>page 2</p>');
    expect((await ask()).text).toBe('<p>page 2</p>');
    now = 30_000;
    expect((await ask()).text).toBe('<p>page 3</p>');
  });

  it('is never given again where it shows what the database does not hold, or was made for nobody', async () => {
    expect(
      await madeFor(
        ...[['/load'], ['/load'], ['/load/abc?step=2'], ['/load/abc?step=2']].map(([path]): [string] => [
          path ?? '',
        ]),
        ['/jobs', { cookie: '' }],
        ['/jobs', { cookie: '' }],
        ['/settings', { cookie: 'session=manager; rehang.said=a%20secret' }],
        ['/settings', { cookie: 'session=manager; rehang.said=a%20secret' }],
        ['/jobs', {}, 'POST'],
        ['/jobs', {}, 'POST'],
      ),
    ).toBe(10);
  });
});

describe('what is no whole page', () => {
  const answers: [name: string, answer: (response: ServerResponse) => void][] = [
    ['a page that is not found', (response) => (response.statusCode = 404)],
    ['an answer that sets a cookie', (response) => response.setHeader('Set-Cookie', 'a=b')],
    ['a download', (response) => response.setHeader('Content-Type', 'text/csv')],
  ];
  it.each(answers)('%s is made anew', async (_, answer) => {
    make = (_request, response) => {
      response.setHeader('Content-Type', 'text/html');
      answer(response);
      made++;
      response.end('some');
    };
    expect(await madeFor(['/jobs'], ['/jobs'])).toBe(2);
  });

  it('a page that broke off is made anew', async () => {
    const whole = make;
    make = (_, response) => {
      response.setHeader('Content-Type', 'text/html');
      response.write('<p>half');
      response.destroy();
      make = whole;
    };
    await expect(ask()).rejects.toThrow();
    expect((await ask()).text).toBe('<p>page 1</p>');
  });
});

it('a database that does not answer leaves the page to be made', async () => {
  pages = new PagesAgain(() => Promise.reject(new Error('gone')));
  expect(await madeFor(['/jobs'], ['/jobs'])).toBe(2);
});

it('of more than there is room for, the pages that were asked for longest ago are let go', async () => {
  make = (_, response) => {
    response.setHeader('Content-Type', 'text/html');
    made++;
    response.end('x'.repeat(3_000));
  };
  const each = (pages: number[]) => madeFor(...pages.map((page): [string] => [`/jobs?page=${page}`]));
  expect(await each([1, 2, 3, 4])).toBe(4);
  expect(await each([4, 3, 2])).toBe(4);
  expect(await each([1])).toBe(5);
});

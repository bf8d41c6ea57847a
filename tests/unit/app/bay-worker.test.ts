import { runInNewContext } from 'node:vm';
import { beforeEach, describe, expect, it } from 'vitest';
import { beWorker } from '@/app/bay/_worker/be-worker';
import type { WorkerScope } from '@/app/bay/_worker/scope';

const ORIGIN = 'http://shop.example';

/** As much of a browser's store of copies as the worker uses, with the order of putting. */
class Copies {
  readonly held = new Map<string, Response>();
  #path = (of: RequestInfo | URL) => new URL(of instanceof Request ? of.url : of.toString(), ORIGIN).pathname;
  match = (of: RequestInfo) => Promise.resolve(this.held.get(this.#path(of))?.clone());
  put = (of: RequestInfo, answer: Response) => {
    this.held.delete(this.#path(of));
    this.held.set(this.#path(of), answer);
    return Promise.resolve();
  };
  delete = (of: RequestInfo) => Promise.resolve(this.held.delete(this.#path(of)));
  keys = () => Promise.resolve([...this.held.keys()].map((path) => new Request(ORIGIN + path)));
}

let copies: Copies;
let shop: (path: string) => Promise<Response>;
let listeners: Map<string, (event: never) => void>;

beforeEach(() => {
  copies = new Copies();
  listeners = new Map();
  shop = (path) => Promise.resolve(new Response(path, { headers: { 'Content-Security-Policy': 'strict' } }));
  beWorker({
    location: { origin: ORIGIN },
    caches: { open: () => Promise.resolve(copies) },
    clients: { claim: () => Promise.resolve() },
    skipWaiting: () => Promise.resolve(),
    fetch: (of: RequestInfo | URL) =>
      shop(new URL(of instanceof Request ? of.url : of.toString(), ORIGIN).pathname),
    addEventListener: (name: string, listener: (event: never) => void) => listeners.set(name, listener),
  } as unknown as WorkerScope);
});

/** What the worker answers; null where it leaves the request to the browser. */
async function visit(path: string, mode: string, method = 'GET'): Promise<string | null> {
  const answers: Promise<Response>[] = [];
  const request = Object.defineProperties(new Request(ORIGIN + path), {
    mode: { value: mode },
    method: { value: method },
  });
  listeners.get('fetch')?.({
    request,
    respondWith: (given: Promise<Response>) => answers.push(given),
  } as never);
  return (await answers[0])?.text() ?? null;
}

async function keep(path: string, needs: string[]): Promise<void> {
  const works: Promise<unknown>[] = [];
  listeners.get('message')?.({
    data: { keep: path, needs },
    ports: [],
    waitUntil: (work: Promise<unknown>) => works.push(work),
  } as never);
  await Promise.all(works);
}

const noLine = () => Promise.reject(new TypeError('no line'));

describe('the worker of the bay', () => {
  it('gives a page of the bay from its copy where there is no line, or the shop is down', async () => {
    await visit('/bay/7', 'navigate');
    shop = noLine;
    expect(await visit('/bay/7', 'navigate')).toBe('/bay/7');
    shop = () => Promise.resolve(new Response('bad gateway', { status: 502 }));
    expect(await visit('/bay/7', 'navigate')).toBe('/bay/7');
    expect((await copies.match('/bay/7'))?.headers.get('Content-Security-Policy')).toBe('strict');
  });

  it('asks the shop first, and keeps no refusal and no way to sign in', async () => {
    await visit('/bay/7', 'navigate');
    shop = () => Promise.resolve(new Response('anew'));
    expect(await visit('/bay/7', 'navigate')).toBe('anew');
    shop = () => Promise.resolve(new Response('forbidden', { status: 403 }));
    expect(await visit('/bay/7', 'navigate')).toBe('forbidden');
    shop = noLine;
    expect(await visit('/bay/7', 'navigate')).toBe('anew');
    await expect(visit('/bay/8', 'navigate')).rejects.toThrow('no line');
  });

  it('leaves alone what is sent, what is asked by the page itself, and all other pages', async () => {
    expect(await visit('/bay/7/entries', 'cors')).toBeNull();
    expect(await visit('/bay/7', 'cors')).toBeNull();
    expect(await visit('/bay/7/entries', 'cors', 'POST')).toBeNull();
    expect(await visit('/jobs', 'navigate')).toBeNull();
    expect(await visit('/bayside', 'navigate')).toBeNull();
  });

  it('keeps what a page runs by, once, and drops what no page needs any more', async () => {
    await keep('/bay/7', [`${ORIGIN}/_next/static/a.js`, '/_next/static/b.css', '/jobs']);
    shop = noLine;
    expect(await visit('/_next/static/a.js', 'no-cors')).toBe('/_next/static/a.js');
    expect(copies.held.has('/jobs')).toBe(false);
    shop = (path) => Promise.resolve(new Response(path));
    await keep('/bay/7', ['/_next/static/c.js']);
    expect([...copies.held.keys()].filter((path) => path.startsWith('/_next'))).toEqual([
      '/_next/static/c.js',
    ]);
  });

  it('keeps the pages of the last rounds only', async () => {
    for (let round = 1; round <= 15; round++) {
      await visit(`/bay/${round}`, 'navigate');
      await keep(`/bay/${round}`, []);
    }
    expect(copies.held.has('/bay/15')).toBe(true);
    expect(copies.held.has('/bay/3')).toBe(false);
  });

  it('is whole in its text, as the browser gets it', () => {
    const names = new Map<string, unknown>();
    const self = { addEventListener: (name: string, listener: unknown) => names.set(name, listener) };
    runInNewContext(`(${beWorker.toString()})(self)`, { self });
    expect([...names.keys()].sort()).toEqual(['activate', 'fetch', 'install', 'message']);
  });
});

import type { KeepPage, WorkerScope } from './scope';

/**
 * The service worker of the bay: its pages come from the shop where there is a line, and else from the copy of their
 * last visit; scripts and styles, whose names change with their content, from the copy at once. A copy keeps the
 * headers of its answer, so the content security policy holds for it as it did. What is entered is none of its
 * business: the page keeps that by itself.
 *
 * It is sent to the browser as the text of this one function (app/bay/worker.js), so it holds all that it needs.
 */
export function beWorker(scope: WorkerScope): void {
  const COPIES = 'rehang-bay';
  /** Where a page notes what it needs, so that what no page needs any more is dropped. */
  const NEEDS = '/bay/needs-of';
  const MOST_PAGES = 12;
  /** A line that does not answer by then is taken for none where there is a copy, ms. */
  const PATIENCE = 4_000;

  const isPage = (path: string) => /^\/bay(\/\d+|\/helper)?$/.test(path);
  const isPart = (path: string) => path.startsWith('/_next/static/') || path === '/icon.svg';
  const open = () => scope.caches.open(COPIES);
  const pathOf = (address: string) => new URL(address, scope.location.origin).pathname;

  async function copyOf(path: string): Promise<Response | undefined> {
    return (await open()).match(path, { ignoreVary: true });
  }

  async function fromShop(path: string, ask: () => Promise<Response>): Promise<Response> {
    const answer = await ask();
    // An answer that led elsewhere, to sign in for one, is no copy of this page.
    if (answer.status === 200 && !answer.redirected) await (await open()).put(path, answer.clone());
    return answer;
  }

  async function page(request: Request): Promise<Response> {
    const path = pathOf(request.url);
    const asked = fromShop(path, () => scope.fetch(request));
    const copy = await copyOf(path);
    if (copy === undefined) return asked;
    const late = new Promise<'late'>((done) => setTimeout(() => done('late'), PATIENCE));
    const first = await Promise.race([asked.catch(() => 'none' as const), late]);
    if (typeof first === 'string') return copy;
    // What stands before a shop that is down answers for it.
    return first.status >= 502 && first.status <= 504 ? copy : first;
  }

  async function part(request: Request): Promise<Response> {
    const path = pathOf(request.url);
    return (await copyOf(path)) ?? fromShop(path, () => scope.fetch(request));
  }

  async function keep({ keep: path, needs }: KeepPage): Promise<void> {
    const copies = await open();
    const paths = [...new Set(needs.map(pathOf))].filter(isPart);
    for (const one of isPage(path) ? [path, ...paths] : [])
      if ((await copyOf(one)) === undefined) await fromShop(one, () => scope.fetch(one));
    await copies.put(`${NEEDS}${path}`, new Response(JSON.stringify(paths)));
    await dropUnneeded();
  }

  async function dropUnneeded(): Promise<void> {
    const copies = await open();
    const paths = (await copies.keys()).map(({ url }) => pathOf(url));
    const pages = paths.filter(isPage);
    for (const old of pages.slice(0, -MOST_PAGES)) {
      await copies.delete(old);
      await copies.delete(`${NEEDS}${old}`);
    }
    const needed = new Set<string>();
    for (const path of pages.slice(-MOST_PAGES)) {
      const noted = await copies.match(`${NEEDS}${path}`);
      for (const one of noted === undefined ? [] : ((await noted.json()) as string[])) needed.add(one);
    }
    for (const path of paths) if (isPart(path) && !needed.has(path)) await copies.delete(path);
  }

  scope.addEventListener('install', (event) => event.waitUntil(scope.skipWaiting()));
  scope.addEventListener('activate', (event) => event.waitUntil(scope.clients.claim()));

  scope.addEventListener('fetch', (event) => {
    const { request } = event;
    const url = new URL(request.url);
    if (request.method !== 'GET' || url.origin !== scope.location.origin) return;
    if (request.mode === 'navigate' && isPage(url.pathname)) event.respondWith(page(request));
    else if (isPart(url.pathname)) event.respondWith(part(request));
  });

  scope.addEventListener('message', (event) => {
    const asked = event.data as Partial<KeepPage> | null;
    const { keep: path, needs } = asked ?? {};
    if (typeof path !== 'string' || !Array.isArray(needs)) return;
    const [answer] = event.ports;
    event.waitUntil(
      keep({ keep: path, needs }).then(
        () => answer?.postMessage('kept'),
        () => answer?.postMessage('failed'),
      ),
    );
  });
}

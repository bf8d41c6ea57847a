import type { KeepPage } from '@/app/bay/_worker/scope';

/** Registered once a visit; where the browser has no workers (a page without https), there is no copy. */
const WORKER = '/bay/worker.js';

/** What the page in the browser runs by. */
function needs(): string[] {
  const parts = [...document.querySelectorAll('script[src], link[rel="stylesheet"], link[rel="preload"]')];
  const named = parts.map((part) => part.getAttribute('src') ?? part.getAttribute('href') ?? '');
  const loaded = performance.getEntriesByType('resource').map(({ name }) => name);
  return [...named, ...loaded].filter((address) => {
    const url = new URL(address, location.href);
    return url.origin === location.origin && url.pathname.startsWith('/_next/static/');
  });
}

/**
 * Has this page, with all it has loaded so far, there for a visit without a connection.
 * @returns whether it is; null where it could not be found out (no connection).
 */
export async function stayThere(): Promise<boolean | null> {
  if (process.env.NODE_ENV !== 'production' || !('serviceWorker' in navigator)) return false;
  try {
    await navigator.serviceWorker.register(WORKER, { scope: '/bay' });
  } catch {
    // Without a connection the worker of the last visit goes on.
    if ((await navigator.serviceWorker.getRegistration('/bay')) === undefined) return null;
  }
  const { active } = await navigator.serviceWorker.ready;
  if (active === null) return null;
  const { port1, port2 } = new MessageChannel();
  const answer = new Promise<boolean>((done) => {
    port1.onmessage = ({ data }: MessageEvent<unknown>) => done(data === 'kept');
  });
  const page: KeepPage = { keep: location.pathname, needs: needs() };
  active.postMessage(page, [port2]);
  return answer;
}

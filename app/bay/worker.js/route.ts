import { beWorker } from '@/app/bay/_worker/be-worker';

/** The service worker of the bay; it holds nothing of any shop. Asked for again at every visit. */
export function GET(): Response {
  return new Response(`(${beWorker.toString()})(self);\n`, {
    headers: {
      'Content-Type': 'text/javascript; charset=utf-8',
      'Cache-Control': 'no-cache',
      // The list of rounds, one step above, is there without a connection too.
      'Service-Worker-Allowed': '/bay',
    },
  });
}

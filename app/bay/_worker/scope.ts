/** The little of a service worker's world that ours uses; the compiler's own types for it exclude a page's. */
export interface WorkerScope {
  location: { origin: string };
  caches: CacheStorage;
  clients: { claim: () => Promise<void> };
  skipWaiting: () => Promise<void>;
  fetch: typeof fetch;
  addEventListener: <Name extends keyof WorkerEvents>(
    name: Name,
    listener: (event: WorkerEvents[Name]) => void,
  ) => void;
}

interface Waiting {
  waitUntil: (work: Promise<unknown>) => void;
}

interface WorkerEvents {
  install: Waiting;
  activate: Waiting;
  fetch: Waiting & { request: Request; respondWith: (answer: Promise<Response>) => void };
  message: Waiting & { data: unknown; ports: readonly MessagePort[] };
}

/** What a page asks of the worker: to have it, and the scripts and styles it runs by, there without a connection. */
export interface KeepPage {
  keep: string;
  needs: string[];
}

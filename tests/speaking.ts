import { AsyncLocalStorage } from 'node:async_hooks';

/** What the framework puts on the server's global object, so that `speaking` has readers of its own in a test. Import it first. */
Object.assign(globalThis, { AsyncLocalStorage });

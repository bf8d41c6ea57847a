import { cache } from 'react';
import { PLAIN, type Speech } from './speech';

interface Holder {
  run: <Result>(speech: Speech, work: () => Result) => Result;
  getStore: () => Speech | undefined;
}

/** The framework puts the class on the server's global object; a browser has none, and one reader only. */
const Storage = (globalThis as { AsyncLocalStorage?: new () => Holder }).AsyncLocalStorage;
const ofEndpoint = Storage === undefined ? null : new Storage();

/** One to a page that is being made: React forgets it with the page. */
const ofPage = cache((): { speech: Speech } => ({ speech: PLAIN }));

/**
 * How the reader of the page or answer that is being made is spoken to. A page must have called `hear` before, an
 * endpoint must run inside `speaking`; a component of the browser asks `useSpeech`.
 */
export const speech = (): Speech => ofEndpoint?.getStore() ?? ofPage().speech;

export function rememberForPage(heard: Speech): void {
  ofPage().speech = heard;
}

/** Runs the work of an endpoint with words and units of its reader. */
export function speaking<Result>(to: Speech, work: () => Result): Result {
  return ofEndpoint === null ? work() : ofEndpoint.run(to, work);
}

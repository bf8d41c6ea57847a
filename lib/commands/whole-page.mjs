/** A page that is sent as a whole has one list for its pieces of markup; see app/_look/still/pieces.ts. */
import { AsyncLocalStorage } from 'node:async_hooks';

/** @type {AsyncLocalStorage<string[]>} */
const all = new AsyncLocalStorage();
Object.assign(globalThis, { rehangPieces: all });

/**
 * Does the work of a request. What a link within the program asks for (`rsc`) is no whole page: it comes without
 * markup beside it.
 * @template Result
 * @param {import('node:http').IncomingMessage} request
 * @param {string[] | null} pieces where they are put in once the page is whole, else null
 * @param {() => Result} work
 * @returns {Result}
 */
export const answeredWhole = (request, pieces, work) =>
  pieces === null || request.headers.rsc !== undefined ? work() : all.run(pieces, work);

import { randomBytes } from 'node:crypto';
import type { IncomingMessage, ServerResponse } from 'node:http';
import { contentSecurityPolicy, NONCE_HEADER } from './content-security-policy';

/** In which the path that a browser asked for reaches the pages. */
export const PATH_HEADER = 'x-rehang-path';

/** Whose answers have their headers from next.config.ts alone. */
const NO_PAGE = /^\/(?:_next\/static\/|load\/upload$|api\/|health(?:\/|$)|metrics$|icon\.svg$)/;

/** Which the framework adds to the address of what a link within the program loads. */
const OF_THE_FRAMEWORK = '_rsc';

/**
 * Before a page is made: gives the answer a content security policy with a nonce of its own, which the framework puts
 * on its scripts because it finds it in the request; and tells the page which path was asked for. Whatever is not
 * surely no page is taken for one.
 */
export function headPage(request: IncomingMessage, response: ServerResponse): void {
  const address = addressOf(request.url ?? '/');
  if (address !== null && NO_PAGE.test(address.pathname)) return;
  const nonce = randomBytes(16).toString('base64');
  const policy = contentSecurityPolicy(nonce);
  response.setHeader('Content-Security-Policy', policy);
  request.headers['content-security-policy'] = policy;
  request.headers[NONCE_HEADER] = nonce;
  address?.searchParams.delete(OF_THE_FRAMEWORK);
  request.headers[PATH_HEADER] = address === null ? '/' : address.pathname + address.search;
}

/** As the framework reads it, `..` and the like followed; null where it is none. */
function addressOf(url: string): URL | null {
  try {
    return new URL(`http://here${url}`);
  } catch {
    return null;
  }
}

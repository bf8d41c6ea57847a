import { NextResponse, type NextRequest } from 'next/server';
import { PATH_HEADER } from '@/app/_shop/path-header';
import { contentSecurityPolicy, NONCE_HEADER } from '@/lib/shield';

/**
 * Runs before every page: gives the answer a content security policy with a nonce of its own, which the framework
 * puts on its scripts because it finds it in the request; and tells the page which path was asked for.
 */
export function proxy(request: NextRequest): NextResponse {
  const nonce = Buffer.from(crypto.getRandomValues(new Uint8Array(16))).toString('base64');
  const policy = contentSecurityPolicy(nonce);
  const headers = new Headers(request.headers);
  headers.set('Content-Security-Policy', policy);
  headers.set(NONCE_HEADER, nonce);
  headers.set(PATH_HEADER, `${request.nextUrl.pathname}${request.nextUrl.search}`);
  const response = NextResponse.next({ request: { headers } });
  response.headers.set('Content-Security-Policy', policy);
  return response;
}

/**
 * Bodies that pass here are cut at 10 MB without a word, so what takes files is left out; those answers, and all
 * that are no pages, have their headers from next.config.ts.
 */
export const config = {
  matcher: ['/((?!_next/static/|load/upload$|api/|health(?:/|$)|metrics$|icon\\.svg$).*)'],
};

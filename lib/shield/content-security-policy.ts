/** What a page may do that is built for people at work on the program itself: its server compiles with eval. */
const development = process.env.NODE_ENV === 'development';

/**
 * The policy of one page: only this origin, and only scripts and styles that carry the nonce of this response or
 * come as files of ours. Charts set their styles by script, which the policy does not concern.
 */
export function contentSecurityPolicy(nonce: string): string {
  return [
    "default-src 'self'",
    `script-src 'self' 'nonce-${nonce}' 'strict-dynamic'${development ? " 'unsafe-eval'" : ''}`,
    development ? "style-src 'self' 'unsafe-inline'" : `style-src 'self' 'nonce-${nonce}'`,
    "img-src 'self' data: blob:",
    "font-src 'self'",
    `connect-src 'self'${development ? ' ws:' : ''}`,
    "worker-src 'self'",
    "object-src 'none'",
    "base-uri 'none'",
    "form-action 'self'",
    "frame-ancestors 'none'",
  ].join('; ');
}

/** Of what is no page: nothing in it is ever run, shown in a frame or loaded from it. */
export const NO_PAGE_POLICY =
  "default-src 'none'; base-uri 'none'; form-action 'none'; frame-ancestors 'none'";

/** In which the nonce reaches the pages, for the little style that stands in one. */
export const NONCE_HEADER = 'x-nonce';

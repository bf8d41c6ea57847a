import type { NextRequest } from 'next/server';

/** The page a form was sent from, or the first one. Only a page of this shop: another host's address is ignored. */
export function pageBefore(request: NextRequest): string {
  const referer = request.headers.get('referer');
  if (referer === null || !URL.canParse(referer)) return '/';
  const url = new URL(referer);
  return url.host === request.headers.get('host') ? `${url.pathname}${url.search}` : '/';
}

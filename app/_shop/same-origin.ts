import type { NextRequest } from 'next/server';

/** True where a browser says that the request comes from another site's page; such a request must change nothing. */
export function comesFromElsewhere(request: NextRequest): boolean {
  const site = request.headers.get('sec-fetch-site');
  if (site !== null) return site !== 'same-origin' && site !== 'none';
  const origin = request.headers.get('origin');
  if (origin === null) return false;
  return !URL.canParse(origin) || new URL(origin).host !== request.headers.get('host');
}

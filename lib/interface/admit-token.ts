import { note } from '@/lib/observe';
import { countAttempt, type Limit } from '@/lib/store/accounts';
import { holderOf, type TokenHolder, type TokenScope } from '@/lib/store/tokens';
import { problem } from './problem';

/** Requests of one token that are let pass; counted in the database, so for all processes together. */
export const REQUESTS: Limit = { points: 300, seconds: 60 };

/**
 * The entrance of everything that programs may ask for: whose token it is decides the shop, its scopes decide the
 * rest. Nothing else of the request has a say in either.
 */
export async function admitToken(
  request: Request,
  scope: TokenScope,
  work: (holder: TokenHolder) => Promise<Response>,
  route: string,
): Promise<Response> {
  try {
    const holder = await holderOf(bearerOf(request.headers.get('authorization')) ?? '');
    if (holder === null) {
      note.tokenRefused('unknown', null);
      const detail = 'Send a token of this shop that is still good: Authorization: Bearer rehang_…';
      return problem(401, detail, { headers: { 'WWW-Authenticate': 'Bearer realm="rehang"' } });
    }
    const wait = await countAttempt('token', REQUESTS, String(holder.token));
    if (wait > 0) {
      note.tokenRefused('too many requests', holder.token);
      const detail = `More than ${REQUESTS.points} requests in ${REQUESTS.seconds} seconds. Wait ${wait} seconds.`;
      return problem(429, detail, { headers: { 'Retry-After': String(wait) } });
    }
    if (!holder.scopes.includes(scope)) {
      note.tokenRefused('scope', holder.token);
      const challenge = `Bearer realm="rehang", error="insufficient_scope", scope="${scope}"`;
      return problem(403, `This takes a token with the scope ${scope}.`, {
        headers: { 'WWW-Authenticate': challenge },
      });
    }
    return await work(holder);
  } catch (error) {
    note.requestFailed({ route, method: request.method, kind: 'interface' }, error);
    return problem(500, 'The program failed; nothing was changed by halves. Try again, then see its log.');
  }
}

/** The token of an Authorization header; null where there is none. */
function bearerOf(header: string | null): string | null {
  if (header === null || header.length > 200) return null;
  const [scheme = '', token = '', ...rest] = header.split(' ');
  return scheme.toLowerCase() === 'bearer' && rest.length === 0 ? token : null;
}

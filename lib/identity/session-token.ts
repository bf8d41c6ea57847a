import { createHmac, timingSafeEqual } from 'node:crypto';
import { origin } from './origin';
import { secret } from './secret';

/**
 * The token of a session in the cookies of a request, where this program has signed it; null otherwise. The form is
 * the sign-in library's own (token, a full stop, HMAC-SHA-256 in base64, percent-encoded), and so is what comes of it:
 * asked itself, it takes some four milliseconds of each page.
 */
export function sessionToken(cookies: string): string | null {
  const name = `${origin().startsWith('https:') ? '__Secure-' : ''}${SESSION_COOKIE}=`;
  const given = cookies
    .split(';')
    .map((cookie) => cookie.trim())
    .find((cookie) => cookie.startsWith(name));
  const value = given === undefined ? null : decoded(given.slice(name.length));
  const end = value?.lastIndexOf('.') ?? -1;
  if (value === null || end < 1) return null;
  const token = value.slice(0, end);
  const signature = Buffer.from(value.slice(end + 1), 'base64');
  const expected = createHmac('sha256', secret()).update(token).digest();
  return signature.length === expected.length && timingSafeEqual(signature, expected) ? token : null;
}

export const SESSION_COOKIE = 'rehang.session_token';

function decoded(text: string): string | null {
  try {
    return decodeURIComponent(text);
  } catch {
    return null;
  }
}

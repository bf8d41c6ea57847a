import { cookies } from 'next/headers';

const NAME = 'rehang.said';
/** Long enough to be led to the page that shows it, and to copy a link from it after a reload, s. */
const SECONDS = 60;

/**
 * A cookie by which an endpoint has the next page say something once: in the address, anybody could put words into
 * this program's mouth, and a secret would stay in the browser's history.
 */
export const saying = (text: string, path: string): string =>
  `${NAME}=${encodeURIComponent(text)}; Path=${path}; Max-Age=${SECONDS}; HttpOnly; SameSite=Lax`;

/** What an endpoint wanted said on this page; null where nothing. */
export async function said(): Promise<string | null> {
  const text = (await cookies()).get(NAME)?.value;
  return text === undefined || text === '' ? null : text;
}

import { createHmac, timingSafeEqual } from 'node:crypto';
import { secret } from './secret';

/**
 * What the link of the first set-up holds: it is printed in the window where the program was started, so that a
 * stranger who finds the page first cannot become manager.
 */
export function setUpKey(): string {
  return createHmac('sha256', secret()).update('first manager').digest('base64url').slice(0, 16);
}

export function isSetUpKey(given: string): boolean {
  const [a, b] = [Buffer.from(setUpKey()), Buffer.from(given)];
  return a.length === b.length && timingSafeEqual(a, b);
}

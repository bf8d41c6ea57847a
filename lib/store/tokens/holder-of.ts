import { timingSafeEqual } from 'node:crypto';
import { database } from '@/lib/store/connection/database';
import { theShop } from '@/lib/store/shop/get-shop';
import type { Shop } from '@/lib/store/types';
import { scopesOf, type TokenScope } from './scopes';
import { digestOf, looksLikeToken } from './token-text';

/** The use of a token is written down no more often than this, ms. */
const USE_EVERY = 60_000;

/** The program that holds a token: the one shop that is open to it, and for what. */
export interface TokenHolder {
  token: number;
  shop: Shop;
  scopes: TokenScope[];
}

/** Whose token this is; null where it is none, has run out or was revoked. */
export async function holderOf(token: string, now = Date.now()): Promise<TokenHolder | null> {
  if (!looksLikeToken(token)) return null;
  const digest = digestOf(token);
  const found = await database().apiToken.findUnique({ where: { digest } });
  if (found === null || !sameText(found.digest, digest)) return null;
  if (found.revokedAt !== null || (found.expiresAt !== null && found.expiresAt.getTime() <= now)) return null;
  // A clock that was set back must not leave a use in the future for good.
  const last = found.lastUsedAt?.getTime() ?? -Infinity;
  if (Math.abs(now - last) >= USE_EVERY)
    await database().apiToken.updateMany({ where: { id: found.id }, data: { lastUsedAt: new Date(now) } });
  return { token: found.id, shop: await theShop(found.shopId), scopes: scopesOf(found.scopes) };
}

/** In a time that does not tell how much of it is the same. */
const sameText = (a: string, b: string) =>
  a.length === b.length && timingSafeEqual(Buffer.from(a), Buffer.from(b));

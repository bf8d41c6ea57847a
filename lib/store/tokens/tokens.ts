import { database, transaction } from '@/lib/store/connection/database';
import { writeTrace } from '@/lib/store/trace/write-trace';
import type { Actor, ShopId } from '@/lib/store/types';
import { scopesOf, type TokenScope } from './scopes';
import { digestOf, newToken } from './token-text';

/** A token as the manager sees it; the token itself is known to nobody but its holder. */
export interface ApiToken {
  id: number;
  name: string;
  scopes: TokenScope[];
  createdAt: number;
  /** Null: it does not run out. */
  expiresAt: number | null;
  /** To the minute. */
  lastUsedAt: number | null;
  revokedAt: number | null;
}

export interface NewToken {
  /** What it is for; unique within the shop, revoked tokens included. */
  name: string;
  scopes: readonly TokenScope[];
  /** Null: it does not run out. */
  expiresAt: number | null;
}

const LONGEST_NAME = 60;

/**
 * Makes a token. It is returned this once; only a digest of it is kept.
 * @throws RangeError where the name is empty, too long or taken, no scope is given, or it would have run out already.
 */
export async function createToken(
  shop: ShopId,
  wanted: NewToken,
  actor: Actor,
  now = Date.now(),
): Promise<string> {
  const name = wanted.name.trim();
  if (name === '' || name.length > LONGEST_NAME)
    throw new RangeError(`Name the token by what it is for, in 1 to ${LONGEST_NAME} characters.`);
  if (wanted.scopes.length === 0)
    throw new RangeError('Choose at least one thing that the token may be used for.');
  if (wanted.expiresAt !== null && wanted.expiresAt <= now)
    throw new RangeError('The day on which the token runs out is past; choose a later one.');
  const token = newToken();
  return transaction(shop, async (queries) => {
    if ((await queries.apiToken.findUnique({ where: { shopId_name: { shopId: shop, name } } })) !== null)
      throw new RangeError(`There is, or was, a token named ${name} already; choose another name.`);
    const { id } = await queries.apiToken.create({
      data: {
        shopId: shop,
        name,
        digest: digestOf(token),
        scopes: [...new Set(wanted.scopes)].join(' '),
        createdAt: new Date(now),
        expiresAt: wanted.expiresAt === null ? null : new Date(wanted.expiresAt),
      },
    });
    await writeTrace(queries, shop, actor, {
      action: 'made a token',
      kind: 'token',
      subject: `token ${id}`,
      after: { name, scopes: [...wanted.scopes], expiresAt: wanted.expiresAt },
    });
    return token;
  });
}

/** Every token of the shop, newest first. */
export async function listTokens(shop: ShopId): Promise<ApiToken[]> {
  const rows = await database().apiToken.findMany({ where: { shopId: shop }, orderBy: { id: 'desc' } });
  return rows.map(({ id, name, scopes, createdAt, expiresAt, lastUsedAt, revokedAt }) => ({
    id,
    name,
    scopes: scopesOf(scopes),
    createdAt: createdAt.getTime(),
    expiresAt: expiresAt?.getTime() ?? null,
    lastUsedAt: lastUsedAt?.getTime() ?? null,
    revokedAt: revokedAt?.getTime() ?? null,
  }));
}

/** Takes a token's use away at once. @returns false where the shop has no such token, or it was revoked before. */
export function revokeToken(shop: ShopId, id: number, actor: Actor, now = Date.now()): Promise<boolean> {
  return transaction(shop, async (queries) => {
    const { count } = await queries.apiToken.updateMany({
      where: { shopId: shop, id, revokedAt: null },
      data: { revokedAt: new Date(now) },
    });
    if (count > 0)
      await writeTrace(queries, shop, actor, {
        action: 'revoked a token',
        kind: 'token',
        subject: `token ${id}`,
      });
    return count > 0;
  });
}

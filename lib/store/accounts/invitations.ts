import { createHash, randomBytes } from 'node:crypto';
import { database, transaction, type Queries } from '@/lib/store/connection/database';
import type { Actor, OpenInvitation, ShopId } from '@/lib/store/types';
import { writeTrace } from '@/lib/store/trace/write-trace';
import { setCredentials, type Credentials } from './credentials';

/** So long a link of invitation is good, ms. */
export const INVITATION_MS = 3 * 24 * 3600 * 1000;

/** Only this is kept of a link: who reads the database cannot take up an invitation. */
const digestOf = (token: string) => createHash('sha256').update(token).digest('hex');

/**
 * Makes the secret part of a link by which one person chooses a sign-in name and password. An earlier link of
 * the same person no longer works.
 * @throws RangeError where there is no such person or it is not active.
 */
export function invite(shop: ShopId, code: string, actor: Actor, now = Date.now()): Promise<string> {
  const token = randomBytes(32).toString('base64url');
  return transaction(shop, async (queries) => {
    const person = await queries.person.findUnique({ where: { shopId_code: { shopId: shop, code } } });
    if (person?.active !== true)
      throw new RangeError(`Nobody with the code ${code} works in this shop; add the person first.`);
    await queries.invitation.deleteMany({ where: { shopId: shop, personId: person.id, usedAt: null } });
    await queries.invitation.create({
      data: {
        shopId: shop,
        personId: person.id,
        digest: digestOf(token),
        createdAt: new Date(now),
        expiresAt: new Date(now + INVITATION_MS),
      },
    });
    await writeTrace(queries, shop, actor, {
      action: 'invited',
      kind: 'account',
      subject: `person ${person.id}`,
      concerns: person.id,
    });
    return token;
  });
}

/** What a link is for; null where it was used, replaced, is too old or never was. */
export async function openInvitation(token: string, now = Date.now()): Promise<OpenInvitation | null> {
  const found = await find(database(), token, now);
  if (found === null) return null;
  const { shop, person } = found;
  return {
    shop: shop.name,
    code: person.code,
    name: person.name,
    signInName: person.user?.username ?? null,
  };
}

/**
 * Takes up an invitation: the person can sign in with these credentials from now on, and with no others.
 * @returns false where the link is no longer good.
 * @throws SignInNameTaken
 */
export async function takeUpInvitation(
  token: string,
  credentials: Credentials,
  now = Date.now(),
): Promise<boolean> {
  const known = await find(database(), token, now);
  if (known === null) return false;
  return transaction(known.shopId, async (queries) => {
    const found = await find(queries, token, now);
    if (found === null) return false;
    const { shopId, personId, person } = found;
    await setCredentials(queries, shopId, personId, credentials, new Date(now));
    await queries.invitation.update({ where: { id: found.id }, data: { usedAt: new Date(now) } });
    await writeTrace(
      queries,
      shopId,
      { person: person.code, via: 'page' },
      {
        action: 'took up the invitation',
        kind: 'account',
        subject: `person ${personId}`,
        concerns: personId,
      },
    );
    return true;
  });
}

function find(queries: Queries, token: string, now: number) {
  return queries.invitation.findFirst({
    where: {
      digest: digestOf(token),
      usedAt: null,
      expiresAt: { gt: new Date(now) },
      person: { active: true },
    },
    select: {
      id: true,
      shopId: true,
      personId: true,
      shop: { select: { name: true } },
      person: { select: { code: true, name: true, user: { select: { username: true } } } },
    },
  });
}

import { database, transaction } from '@/lib/store/connection/database';
import { writeTrace } from '@/lib/store/trace/write-trace';
import type { Actor, ShopId, SignedInSession } from '@/lib/store/types';

/** The sessions of one person that are still good, newest first. */
export async function sessionsOf(shop: ShopId, code: string, now = Date.now()): Promise<SignedInSession[]> {
  const rows = await database().session.findMany({
    where: { user: { shopId: shop, person: { code } }, expiresAt: { gt: new Date(now) } },
    select: { id: true, createdAt: true, expiresAt: true, userAgent: true },
    orderBy: { createdAt: 'desc' },
  });
  return rows.map(({ id, createdAt, expiresAt, userAgent }) => ({
    id,
    startedAt: createdAt.getTime(),
    expiresAt: expiresAt.getTime(),
    browser: userAgent,
  }));
}

/** Ends sessions of one person: this one, or all but the one to be kept. At once, on every device. */
export async function endSessions(
  shop: ShopId,
  code: string,
  which: { only?: string | undefined; except?: string | undefined },
  actor: Actor,
): Promise<number> {
  return transaction(shop, async (queries) => {
    const person = await queries.person.findUnique({ where: { shopId_code: { shopId: shop, code } } });
    if (person === null) throw new RangeError(`The shop has nobody with the code ${code}.`);
    const { only, except } = which;
    const { count } = await queries.session.deleteMany({
      where: {
        user: { shopId: shop, personId: person.id },
        ...(only !== undefined && { id: only }),
        ...(except !== undefined && { id: { not: except } }),
      },
    });
    await writeTrace(queries, shop, actor, {
      action: `ended ${count} sessions`,
      kind: 'account',
      subject: `person ${person.id}`,
      concerns: person.id,
    });
    return count;
  });
}

import { database } from '@/lib/store/connection/database';
import type { PersonAccount, Role, ShopId } from '@/lib/store/types';

/** Everybody of the shop with whether and how they can sign in, by code. */
export async function listPeopleAccounts(shop: ShopId, now = Date.now()): Promise<PersonAccount[]> {
  const good = { expiresAt: { gt: new Date(now) } };
  const rows = await database().person.findMany({
    where: { shopId: shop },
    select: {
      code: true,
      name: true,
      role: true,
      active: true,
      removedAt: true,
      user: {
        select: {
          username: true,
          twoFactorEnabled: true,
          sessions: { where: good, select: { createdAt: true }, orderBy: { createdAt: 'desc' }, take: 1 },
        },
      },
      invitations: { where: { usedAt: null, ...good }, select: { expiresAt: true }, take: 1 },
    },
    orderBy: { code: 'asc' },
  });
  return rows.map(({ user, invitations, removedAt, role, ...person }) => ({
    ...person,
    role: role as Role,
    signInName: user?.username ?? null,
    secondFactor: user?.twoFactorEnabled === true,
    signedInAt: user?.sessions[0]?.createdAt.getTime() ?? null,
    invitedUntil: invitations[0]?.expiresAt.getTime() ?? null,
    removed: removedAt !== null,
  }));
}

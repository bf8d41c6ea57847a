import { database } from '@/lib/store/connection/database';
import { shopColumns, shopOf } from '@/lib/store/shop/get-shop';
import type { AccountHolder, Role } from '@/lib/store/types';

/** Whom an account belongs to; null where the person is gone or no longer works here. */
export async function accountHolder(userId: string): Promise<AccountHolder | null> {
  const user = await database().user.findUnique({
    where: { id: userId },
    select: {
      username: true,
      twoFactorEnabled: true,
      shop: { select: shopColumns },
      person: { select: { code: true, name: true, role: true, active: true } },
    },
  });
  if (user?.person.active !== true) return null;
  const { shop, person, username, twoFactorEnabled } = user;
  return {
    shop: shopOf(shop),
    person: { ...person, role: person.role as Role },
    signInName: username ?? '',
    secondFactor: twoFactorEnabled === true,
  };
}

/** Whether anybody at all can sign in. */
export async function hasAccounts(): Promise<boolean> {
  return (await database().user.findFirst({ select: { id: true } })) !== null;
}

import { transaction } from '@/lib/store/connection/database';
import { getShop } from '@/lib/store/shop/get-shop';
import { writeTrace } from '@/lib/store/trace/write-trace';
import { setCredentials, type Credentials } from './credentials';

export interface FirstManager extends Credentials {
  shopName: string;
  timeZone: string;
  code: string;
  name: string;
}

/**
 * Names the shop and lets its manager in: once, while nobody can sign in yet.
 * @returns false where somebody can.
 */
export async function makeFirstManager(
  { shopName, timeZone, code, name, ...credentials }: FirstManager,
  now = Date.now(),
): Promise<boolean> {
  const shop = (await getShop()).id;
  return transaction(shop, async (queries) => {
    if ((await queries.user.findFirst({ select: { id: true } })) !== null) return false;
    await queries.shop.update({ where: { id: shop }, data: { name: shopName, timeZone } });
    const person = await queries.person.upsert({
      where: { shopId_code: { shopId: shop, code } },
      create: { shopId: shop, code, name, role: 'manager', active: true },
      update: { name, role: 'manager', active: true },
    });
    await setCredentials(queries, shop, person.id, credentials, new Date(now));
    await writeTrace(
      queries,
      shop,
      { person: code, via: 'page' },
      { action: 'set up the shop', kind: 'account', subject: `person ${person.id}`, concerns: person.id },
    );
    return true;
  });
}

import { database, transaction } from '@/lib/store/connection/database';
import type { Role, ShopId } from '@/lib/store/types';
import { setCredentials } from './credentials';

/** The accounts of an invented shop; none in a database without one. */
export async function demoSignInNames(): Promise<{ signInName: string; role: Role; name: string }[]> {
  const users = await database().user.findMany({
    where: { shop: { demo: true }, person: { active: true } },
    select: { username: true, person: { select: { role: true, name: true } } },
    orderBy: { username: 'asc' },
  });
  return users.map(({ username, person }) => ({
    signInName: username ?? '',
    role: person.role as Role,
    name: person.name,
  }));
}

/** Lets people of an invented shop sign in by their codes, all by one password. */
export async function openDemo(shop: ShopId, codes: readonly string[], passwordHash: string): Promise<void> {
  await transaction(shop, async (queries) => {
    await queries.shop.update({ where: { id: shop }, data: { demo: true } });
    for (const code of codes) {
      const person = await queries.person.findUnique({ where: { shopId_code: { shopId: shop, code } } });
      if (person === null) throw new RangeError(`The demo shop has nobody with the code ${code}.`);
      const credentials = { signInName: code.toLowerCase(), passwordHash };
      await setCredentials(queries, shop, person.id, credentials, new Date());
    }
  });
}

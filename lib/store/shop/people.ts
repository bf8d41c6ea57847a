import { database, transaction } from '@/lib/store/connection/database';
import type { Person, Role, ShopId } from '@/lib/store/types';

const columns = { code: true, name: true, role: true, active: true } as const;
// The database's CHECK holds the set of roles.
const person = (row: Omit<Person, 'role'> & { role: string }): Person => ({ ...row, role: row.role as Role });

/** Everybody, by code. */
export async function listPeople(shop: ShopId): Promise<Person[]> {
  const rows = await database().person.findMany({
    where: { shopId: shop },
    select: columns,
    orderBy: { code: 'asc' },
  });
  return rows.map(person);
}

export async function getPerson(shop: ShopId, code: string): Promise<Person | null> {
  const row = await database().person.findUnique({
    where: { shopId_code: { shopId: shop, code } },
    select: columns,
  });
  return row && person(row);
}

/** Adds people, or changes those whose code is known. All or nothing. */
export async function savePeople(shop: ShopId, people: readonly Person[]): Promise<void> {
  await transaction(shop, async (queries) => {
    for (const { code, name, role, active } of people) {
      await queries.person.upsert({
        where: { shopId_code: { shopId: shop, code } },
        create: { shopId: shop, code, name, role, active },
        update: { name, role, active },
      });
    }
  });
}

import type { Rows } from '@/lib/store/sql/rows';

const PEOPLE = 20_000;

/** Adds so many people to a shop that a connection's cache cannot hold them, 20 MB. */
export async function fillWithPeople(rows: Rows, shop: number): Promise<void> {
  const people = rows.into('Person', ['shopId', 'code', 'name', 'role']);
  const name = 'n'.repeat(1_000);
  for (let person = 0; person < PEOPLE; person++) people.add(shop, `P${person}`, name, 'technician');
  await people.flush();
}

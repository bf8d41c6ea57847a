import type { Queries } from '@/lib/store/connection/database';
import type { ShopId } from '@/lib/store/types';

/**
 * The row of a person; null for null.
 * @throws RangeError where the shop has nobody of this code.
 */
export async function personRow(queries: Queries, shop: ShopId, code: string): Promise<number>;
export async function personRow(queries: Queries, shop: ShopId, code: string | null): Promise<number | null>;
export async function personRow(queries: Queries, shop: ShopId, code: string | null): Promise<number | null> {
  if (code === null) return null;
  const where = { shopId_code: { shopId: shop, code } };
  const person = await queries.person.findUnique({ where, select: { id: true } });
  if (person === null) throw new RangeError(`The shop has nobody with the code ${code}.`);
  return person.id;
}

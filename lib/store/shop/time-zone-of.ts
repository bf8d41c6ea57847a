import type { Statements } from '@/lib/store/sql/statements';
import type { ShopId } from '@/lib/store/types';

/** The zone that the shop's months are counted in, as it is within a transaction. */
export async function timeZoneOf(within: Statements, shop: ShopId): Promise<string> {
  const [row] = await within.$queryRaw<
    { timeZone: string }[]
  >`SELECT "timeZone" FROM "Shop" WHERE "id" = ${shop}`;
  if (row === undefined) throw new RangeError(`There is no shop ${shop}.`);
  return row.timeZone;
}

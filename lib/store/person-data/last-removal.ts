import type { Statements } from '@/lib/store/sql/statements';
import type { Json, ShopId } from '@/lib/store/types';

/** Version of the inputs since when somebody is no longer named in them; 0 where nobody was removed. */
export async function lastRemoval(within: Statements, shop: ShopId): Promise<number> {
  const [row] = await within.$queryRaw<{ after: Json }[]>`
    SELECT "after" FROM "Trace" WHERE "shopId" = ${shop} AND "kind" = 'person' AND "action" = 'removed'
    ORDER BY "id" DESC LIMIT 1`;
  const after = row?.after;
  const version =
    typeof after === 'object' && after !== null && !Array.isArray(after) ? after.inputsVersion : 0;
  return typeof version === 'number' ? version : 0;
}

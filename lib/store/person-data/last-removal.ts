import type { Queries } from '@/lib/store/connection/database';
import type { ShopId } from '@/lib/store/types';

/** Version of the inputs since when somebody is no longer named in them; 0 where nobody was removed. */
export async function lastRemoval(queries: Queries, shop: ShopId): Promise<number> {
  const row = await queries.trace.findFirst({
    where: { shopId: shop, kind: 'person', action: 'removed' },
    orderBy: { id: 'desc' },
    select: { after: true },
  });
  const after = row?.after;
  const version =
    typeof after === 'object' && after !== null && !Array.isArray(after) ? after.inputsVersion : 0;
  return typeof version === 'number' ? version : 0;
}

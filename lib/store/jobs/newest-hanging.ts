import { database } from '@/lib/store/connection/database';
import type { SetupFilter, ShopId } from '@/lib/store/types';
import { handIds } from './hand-ids';

/** When a gauge was hung last, ms; null before the first. What pages call `now`. */
export async function newestHanging(
  shop: ShopId,
  filter: Pick<SetupFilter, 'technician'> = {},
): Promise<number | null> {
  const newest = await database().setup.findFirst({
    where: { shopId: shop, ...(await handIds(shop, filter)) },
    orderBy: { hungAt: 'desc' },
    select: { hungAt: true },
  });
  return newest?.hungAt.getTime() ?? null;
}

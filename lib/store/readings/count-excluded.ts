import { database } from '@/lib/store/connection/database';
import { setupWhere } from '@/lib/store/jobs/setup-where';
import type { SetupFilter, ShopId } from '@/lib/store/types';

/** How many readings of these setups are excluded: whoever shows a figure made from the others says so beside it. */
export async function countExcluded(shop: ShopId, filter: SetupFilter = {}): Promise<number> {
  const { _sum } = await database().observation.aggregate({
    where: { excluded: { gt: 0 }, setup: await setupWhere(shop, filter) },
    _sum: { excluded: true },
  });
  return _sum.excluded ?? 0;
}

import { database } from '@/lib/store/connection/database';
import type { ShopId } from '@/lib/store/types';

/** Tells apart what is kept of a fit's shares at one time and at another: how many they are, and of which versions. */
export async function shareStamp(shop: ShopId, fit: number): Promise<string> {
  const { _count, _sum } = await database().jobShare.aggregate({
    where: { shopId: shop, fitId: fit },
    _count: true,
    _sum: { jobVersion: true },
  });
  return `${_count} of ${_sum.jobVersion ?? 0}`;
}

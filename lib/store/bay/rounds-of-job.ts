import { database } from '@/lib/store/connection/database';
import type { ShopId } from '@/lib/store/types';

/** Ids of a job's rounds that were measured beside the car, in the order they were begun. */
export async function bayRoundsOfJob(shop: ShopId, job: string): Promise<number[]> {
  const rows = await database().bayRound.findMany({
    where: { shopId: shop, job },
    select: { id: true },
    orderBy: { id: 'asc' },
  });
  return rows.map(({ id }) => id);
}

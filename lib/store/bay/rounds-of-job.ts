import { ask } from '@/lib/store/sql/ask';
import type { ShopId } from '@/lib/store/types';

/** Ids of a job's rounds that were measured beside the car, in the order they were begun. */
export async function bayRoundsOfJob(shop: ShopId, job: string): Promise<number[]> {
  const rows = await ask<{ id: number }>`
    SELECT b."id" FROM "BayRound" b WHERE b."shopId" = ${shop} AND b."job" = ${job} ORDER BY b."id"`;
  return rows.map(({ id }) => id);
}

import { among } from '@/lib/store/sql/among';
import { ask } from '@/lib/store/sql/ask';
import type { ShopId } from '@/lib/store/types';

/** The numbers of these jobs by first reading, then number: the order of `jobShares`, whether they have one or not. */
export async function jobsInOrder(shop: ShopId, jobs: readonly string[]): Promise<string[]> {
  const rows = await ask<{ number: string }>`
    SELECT "number" FROM "Job" WHERE "shopId" = ${shop} AND "number" ${among(jobs)} ORDER BY "openedAt", "number"`;
  return rows.map(({ number }) => number);
}

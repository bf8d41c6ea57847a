import { ask } from '@/lib/store/sql/ask';
import { namedJobs } from '@/lib/store/sql/named-jobs';
import type { ShopId } from '@/lib/store/types';

/** The numbers of these jobs by first reading, then number: the order of `jobShares`, whether they have one or not. */
export async function jobsInOrder(shop: ShopId, jobs: readonly string[]): Promise<string[]> {
  const rows = await ask<{ number: string }>`
    SELECT "number" FROM "Job" WHERE "id" ${namedJobs(shop, jobs)} ORDER BY "openedAt", "number"`;
  return rows.map(({ number }) => number);
}

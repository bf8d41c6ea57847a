import { inChunks } from '@/lib/store/save/in-chunks';
import type { ShopId } from '@/lib/store/types';
import { among } from './among';
import type { Statements } from './statements';

/** The rows of jobs by their numbers; those that the shop does not have are left out. */
export async function jobIds(
  within: Statements,
  shop: ShopId,
  numbers: readonly string[],
): Promise<Map<string, number>> {
  const rows = await inChunks(
    numbers,
    (some) => within.$queryRaw<{ id: number; number: string }[]>`
      SELECT "id", "number" FROM "Job" WHERE "shopId" = ${shop} AND "number" ${among(some)}`,
  );
  return new Map(rows.map(({ id, number }) => [number, id]));
}

import type { Queries } from '@/lib/store/connection/database';
import type { ShopId } from '@/lib/store/types';
import { inputsChanged } from './get-shop';

/** Says, within the change itself, that whatever was made from a round, its job or the shop is out of date. */
export async function roundChanged(
  queries: Queries,
  shop: ShopId,
  { roundId, jobId }: { roundId: number; jobId: number },
): Promise<void> {
  await queries.round.update({ where: { id: roundId }, data: { version: { increment: 1 } } });
  await queries.job.update({ where: { id: jobId }, data: { version: { increment: 1 } } });
  await inputsChanged(queries, shop);
}

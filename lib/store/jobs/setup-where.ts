import type { Prisma } from '@/lib/store/generated/sqlite/client';
import type { SetupFilter, ShopId } from '@/lib/store/types';
import { handIds } from './hand-ids';

/** The setups that a filter shows. */
export async function setupWhere(
  shop: ShopId,
  { technician, gauge, job, from, to }: SetupFilter,
): Promise<Prisma.SetupWhereInput> {
  return {
    shopId: shop,
    ...(await handIds(shop, { technician, gauge })),
    ...(job !== undefined && { job: { number: job } }),
    ...((from !== undefined || to !== undefined) && {
      hungAt: {
        ...(from !== undefined && { gte: new Date(from) }),
        ...(to !== undefined && { lt: new Date(to) }),
      },
    }),
  };
}

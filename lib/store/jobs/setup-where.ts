import type { Prisma } from '@/lib/store/generated/sqlite/client';
import type { SetupFilter, ShopId } from '@/lib/store/types';
import { handIds } from './hand-ids';

/** The setups that a filter shows. */
export async function setupWhere(
  shop: ShopId,
  { technician, gauge, job, sheet, section, from, to }: SetupFilter,
): Promise<Prisma.SetupWhereInput> {
  return {
    shopId: shop,
    ...(await handIds(shop, { technician, gauge })),
    ...((job !== undefined || sheet !== undefined) && {
      job: {
        ...(job !== undefined && { number: job }),
        ...(sheet !== undefined && { sheet: { name: sheet } }),
      },
    }),
    ...(section !== undefined && { observations: { some: { dimension: { section } } } }),
    ...((from !== undefined || to !== undefined) && {
      hungAt: {
        ...(from !== undefined && { gte: new Date(from) }),
        ...(to !== undefined && { lt: new Date(to) }),
      },
    }),
  };
}

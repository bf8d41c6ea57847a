import { database } from '@/lib/store/connection/database';
import type { ShopId } from '@/lib/store/types';

/** What has been loaded so far, whichever process did it. */
export async function loadedSoFar(shop: ShopId): Promise<{ files: number; readings: number }> {
  const { _count, _sum } = await database().loadedFile.aggregate({
    where: { shopId: shop },
    _count: true,
    _sum: { added: true },
  });
  return { files: _count, readings: _sum.added ?? 0 };
}

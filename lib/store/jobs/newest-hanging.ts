import { ask } from '@/lib/store/sql/ask';
import type { SetupFilter, ShopId } from '@/lib/store/types';
import { setupsThat } from './setups-that';

/** When a gauge was hung last, ms; null before the first. What pages call `now`. */
export async function newestHanging(
  shop: ShopId,
  filter: Pick<SetupFilter, 'technician'> = {},
): Promise<number | null> {
  const [newest] = await ask<{ hungAt: Date }>`
    SELECT s."hungAt" FROM "Setup" s WHERE ${await setupsThat(shop, filter)} ORDER BY s."hungAt" DESC LIMIT 1`;
  return newest?.hungAt.getTime() ?? null;
}

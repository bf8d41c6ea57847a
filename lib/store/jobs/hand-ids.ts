import { ask } from '@/lib/store/sql/ask';
import type { ShopId } from '@/lib/store/types';

/** What nobody and nothing has. */
const NONE = 0;

export interface HandIds {
  technicianId?: number;
  gaugeId?: number;
}

/**
 * Whose setups and with which gauge, by id: a setup's own columns then lead the search, through an index that
 * is in order of time. An unknown code or tag becomes an id that no row has.
 */
export async function handIds(
  shop: ShopId,
  { technician, gauge }: { technician?: string | undefined; gauge?: string | undefined },
): Promise<HandIds> {
  const ids: HandIds = {};
  if (technician !== undefined) {
    const [row] = await ask<{
      id: number;
    }>`SELECT "id" FROM "Person" WHERE "shopId" = ${shop} AND "code" = ${technician}`;
    ids.technicianId = row?.id ?? NONE;
  }
  if (gauge !== undefined) {
    const [row] = await ask<{
      id: number;
    }>`SELECT "id" FROM "Gauge" WHERE "shopId" = ${shop} AND "tag" = ${gauge}`;
    ids.gaugeId = row?.id ?? NONE;
  }
  return ids;
}

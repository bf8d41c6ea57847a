import { database } from '@/lib/store/connection/database';
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
  const select = { id: true } as const;
  const ids: HandIds = {};
  if (technician !== undefined) {
    const where = { shopId_code: { shopId: shop, code: technician } };
    ids.technicianId = (await database().person.findUnique({ where, select }))?.id ?? NONE;
  }
  if (gauge !== undefined) {
    const where = { shopId_tag: { shopId: shop, tag: gauge } };
    ids.gaugeId = (await database().gauge.findUnique({ where, select }))?.id ?? NONE;
  }
  return ids;
}

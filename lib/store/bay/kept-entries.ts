import type { KeptEntry } from '@/lib/bay';
import { database } from '@/lib/store/connection/database';
import type { ShopId } from '@/lib/store/types';
import { entryColumns, keptEntry } from './entry-row';

/**
 * What was entered in a round, in the order of arrival.
 * @param since the last one that is known already; 0 for all.
 * @param by only what this person entered.
 */
export async function bayEntries(
  shop: ShopId,
  round: number,
  since: number,
  by?: string,
): Promise<KeptEntry[]> {
  const rows = await database().bayEntry.findMany({
    where: {
      shopId: shop,
      bayRoundId: round,
      id: { gt: since },
      ...(by !== undefined && { person: { code: by } }),
    },
    select: entryColumns,
    orderBy: { id: 'asc' },
  });
  return rows.map(keptEntry);
}

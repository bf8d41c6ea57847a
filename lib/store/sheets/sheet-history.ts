import { database } from '@/lib/store/connection/database';
import type { SheetRevision, ShopId } from '@/lib/store/types';
import { parseRevision } from './revision-document';

/** Every revision of a sheet, the first first; none where it was never entered or corrected by hand. */
export async function sheetHistory(shop: ShopId, name: string): Promise<SheetRevision[]> {
  const rows = await database().sheetRevision.findMany({
    where: { shopId: shop, sheet: { name } },
    orderBy: { revision: 'asc' },
    select: {
      ...{ revision: true, at: true, reason: true, document: true },
      person: { select: { code: true } },
    },
  });
  return rows.map(({ revision, at, reason, document, person }) => {
    const { origin, copiedFrom, points, dimensions } = parseRevision(document);
    return {
      ...{ revision, at: at.getTime(), by: person.code, reason, origin, copiedFrom },
      content: { points, dimensions },
    };
  });
}

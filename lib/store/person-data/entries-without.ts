import type { Queries } from '@/lib/store/connection/database';
import type { Json, ShopId } from '@/lib/store/types';
import { lookedFor, textWithout, type Renaming } from './without-person';

/** Kinds of entries in which people write freely, and where. All else in them names points, gauges and setups. */
const WRITTEN_IN = ['equipment', 'correct', 'skip', 'settle'];
const TEXTS = ['note', 'reason'];

/** Entries held at once. */
const AT_ONCE = 2_000;

interface Changed {
  id: number;
  document: Record<string, Json>;
}

/** The entries of rounds beside the car in which a person is named, with what they are to hold instead. */
export async function entriesWithout(queries: Queries, shop: ShopId, renaming: Renaming): Promise<Changed[]> {
  const changed: Changed[] = [];
  if (lookedFor(renaming).length === 0) return changed;
  for (let last = 0; ;) {
    const rows = await queries.bayEntry.findMany({
      where: { shopId: shop, kind: { in: WRITTEN_IN }, id: { gt: last } },
      select: { id: true, document: true },
      orderBy: { id: 'asc' },
      take: AT_ONCE,
    });
    for (const { id, document } of rows) {
      const without = documentWithout(document as Record<string, Json>, renaming);
      if (without !== null) changed.push({ id, document: without });
    }
    const end = rows.at(-1);
    if (end === undefined) return changed;
    last = end.id;
  }
}

/** Null where there is nothing to change. */
function documentWithout(document: Record<string, Json>, renaming: Renaming): Changed['document'] | null {
  const renamed = Object.fromEntries(
    Object.entries(document).map(([name, value]) => [
      name,
      TEXTS.includes(name) && typeof value === 'string' ? textWithout(value, renaming) : value,
    ]),
  );
  return TEXTS.some((name) => renamed[name] !== document[name]) ? renamed : null;
}

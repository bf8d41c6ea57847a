import { database } from '@/lib/store/connection/database';
import { among } from '@/lib/store/sql/among';
import type { Json, ShopId } from '@/lib/store/types';

/** Documents that are held at once. */
const AT_ONCE = 200;

/** The documents of all verdicts: jobs by first reading, then number; rounds in the order of the work. */
export async function* verdictsInOrder(shop: ShopId): AsyncGenerator<Json, void, undefined> {
  const rows = await database().$queryRaw<{ roundId: number }[]>`
    SELECT v."roundId" FROM "RoundVerdict" v
      JOIN "Round" r ON r."id" = v."roundId" JOIN "Job" j ON j."id" = r."jobId"
    WHERE v."shopId" = ${shop}
    ORDER BY j."openedAt", j."number", CASE WHEN r."stage" = 'before' THEN 0 ELSE 1 END, r."attempt"`;
  for (let start = 0; start < rows.length; start += AT_ONCE) {
    const ids = rows.slice(start, start + AT_ONCE).map(({ roundId }) => roundId);
    const found = await database().$queryRaw<{ roundId: number; document: Json }[]>`
      SELECT "roundId", "document" FROM "RoundVerdict" WHERE "roundId" ${among(ids)}`;
    const documents = new Map(found.map(({ roundId, document }) => [roundId, document]));
    for (const id of ids) {
      const document = documents.get(id);
      if (document !== undefined) yield document;
    }
  }
}

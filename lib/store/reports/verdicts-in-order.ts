import { database } from '@/lib/store/connection/database';
import { among } from '@/lib/store/sql/among';
import { documentsInOrder } from '@/lib/store/sql/documents-in-order';
import type { Json, ShopId } from '@/lib/store/types';

/** The documents of all verdicts: jobs by first reading, then number; rounds in the order of the work. */
export async function* verdictsInOrder(shop: ShopId): AsyncGenerator<Json, void, undefined> {
  const rows = await database().$queryRaw<{ id: number }[]>`
    SELECT v."roundId" AS "id" FROM "RoundVerdict" v
      JOIN "Round" r ON r."id" = v."roundId" JOIN "Job" j ON j."id" = r."jobId"
    WHERE v."shopId" = ${shop}
    ORDER BY j."openedAt", j."number", CASE WHEN r."stage" = 'before' THEN 0 ELSE 1 END, r."attempt"`;
  yield* documentsInOrder(
    rows.map(({ id }) => id),
    (ids) => database().$queryRaw<{ id: number; document: Json }[]>`
      SELECT "roundId" AS "id", "document" FROM "RoundVerdict" WHERE "roundId" ${among(ids)}`,
  );
}

import { database } from '@/lib/store/connection/database';
import { Prisma } from '@/lib/store/generated/sqlite/client';
import { among } from '@/lib/store/sql/among';
import { documentsInOrder } from '@/lib/store/sql/documents-in-order';
import type { Json, ShopId } from '@/lib/store/types';

/** What jobs add to the shop's answers: jobs by first reading, then number; all that are kept, or those of some jobs. */
export async function* jobShares(
  shop: ShopId,
  jobs?: readonly string[],
): AsyncGenerator<Json, void, undefined> {
  const only = jobs === undefined ? Prisma.empty : Prisma.sql`AND j."number" ${among(jobs)}`;
  const rows = await database().$queryRaw<{ id: number }[]>`
    SELECT h."jobId" AS "id" FROM "JobShare" h JOIN "Job" j ON j."id" = h."jobId"
    WHERE h."shopId" = ${shop} ${only} ORDER BY j."openedAt", j."number"`;
  yield* documentsInOrder(
    rows.map(({ id }) => id),
    (ids) => database().$queryRaw<{ id: number; document: Json }[]>`
      SELECT "jobId" AS "id", "document" FROM "JobShare" WHERE "jobId" ${among(ids)}`,
  );
}

import { among } from '@/lib/store/sql/among';
import { ask } from '@/lib/store/sql/ask';
import { documentsInOrder } from '@/lib/store/sql/documents-in-order';
import { jobsOf } from '@/lib/store/sql/named-jobs';
import type { Json, ShopId } from '@/lib/store/types';

/** What jobs add to the shop's answers: jobs by first reading, then number; all that are kept, or those of some jobs. */
export async function* jobShares(
  shop: ShopId,
  jobs?: readonly string[],
): AsyncGenerator<Json, void, undefined> {
  const rows = await ask<{ id: number }>`
    SELECT h."jobId" AS "id" FROM "Job" j JOIN "JobShare" h ON h."jobId" = j."id"
    WHERE ${jobsOf(shop, jobs)} ORDER BY j."openedAt", j."number"`;
  yield* documentsInOrder(
    rows.map(({ id }) => id),
    async (ids) => {
      // As text: each is read once, and need not be held.
      const texts = await ask<{ id: number; text: string }>`
        SELECT "jobId" AS "id", CAST("document" AS TEXT) AS "text" FROM "JobShare" WHERE "jobId" ${among(ids)}`;
      return texts.map(({ id, text }) => ({ id, document: JSON.parse(text) as Json }));
    },
  );
}

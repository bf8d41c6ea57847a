import { database } from '@/lib/store/connection/database';
import { among } from '@/lib/store/sql/among';
import type { Json, ShopId } from '@/lib/store/types';

/** Documents that are held at once. */
const AT_ONCE = 200;

/** What jobs add to the shop's answers: jobs by first reading, then number; all that are kept, or those of some jobs. */
export async function* jobShares(
  shop: ShopId,
  jobs?: readonly string[],
): AsyncGenerator<Json, void, undefined> {
  const only = jobs === undefined ? null : new Set(jobs);
  const rows = await database().$queryRaw<{ jobId: number; number: string }[]>`
    SELECT h."jobId", j."number" FROM "JobShare" h JOIN "Job" j ON j."id" = h."jobId"
    WHERE h."shopId" = ${shop} ORDER BY j."openedAt", j."number"`;
  const wanted = rows.filter(({ number }) => only?.has(number) ?? true);
  for (let start = 0; start < wanted.length; start += AT_ONCE) {
    const ids = wanted.slice(start, start + AT_ONCE).map(({ jobId }) => jobId);
    const found = await database().$queryRaw<{ jobId: number; document: Json }[]>`
      SELECT "jobId", "document" FROM "JobShare" WHERE "jobId" ${among(ids)}`;
    const documents = new Map(found.map(({ jobId, document }) => [jobId, document]));
    for (const id of ids) {
      const document = documents.get(id);
      if (document !== undefined) yield document;
    }
  }
}

import { ask } from '@/lib/store/sql/ask';
import type { ShopId } from '@/lib/store/types';
import { ofJob } from '@/lib/store/verdicts/rounds-without-verdict';

export interface JobWithoutShare {
  job: string;
  /** Of its readings. */
  version: number;
  /** Whether it has a share that was made with this fit in this way, of an earlier version. */
  older: boolean;
}

/**
 * Jobs, or this one, whose share is absent, older than their readings, or was made with another fit or otherwise; those
 * too that have a share, but no reading any more that counts.
 */
export async function jobsWithoutShare(
  shop: ShopId,
  fit: number,
  madeBy: string,
  job?: string,
): Promise<JobWithoutShare[]> {
  const rows = await ask<Omit<JobWithoutShare, 'older'> & { older: number }>`
    SELECT j."number" AS "job", j."version",
      CASE WHEN h."fitId" = ${fit} AND h."madeBy" = ${madeBy} THEN 1 ELSE 0 END AS "older"
    FROM "Job" j LEFT JOIN "JobShare" h ON h."jobId" = j."id"
    WHERE j."shopId" = ${shop} ${ofJob(job)}
      AND (h."jobId" IS NULL OR h."jobVersion" <> j."version" OR h."fitId" <> ${fit} OR h."madeBy" <> ${madeBy})
      AND (h."jobId" IS NOT NULL OR EXISTS (
        SELECT 1 FROM "Setup" s JOIN "Observation" o ON o."setupId" = s."id"
        WHERE s."jobId" = j."id" AND o."n" > 0))
    ORDER BY j."openedAt", j."number"`;
  return rows.map((row) => ({ ...row, older: row.older === 1 }));
}

import { ask } from '@/lib/store/sql/ask';
import type { ShopId } from '@/lib/store/types';
import {
  ofRoundsJob,
  SOMETHING_COUNTS,
  type WaitingRound,
} from '@/lib/store/verdicts/rounds-without-verdict';

/**
 * Rounds, of one job or of all, that were not yet looked through for proved heights, or whose readings or outcomes
 * changed since.
 */
export async function roundsWithoutProof(
  shop: ShopId,
  format: number,
  job?: string,
): Promise<WaitingRound[]> {
  return ask<WaitingRound>`
    SELECT j."number" AS "job", r."stage", r."attempt", r."version"
    FROM "Round" r JOIN "Job" j ON j."id" = r."jobId"
      LEFT JOIN "RoundProof" p
        ON p."roundId" = r."id" AND p."roundVersion" = r."version" AND p."format" = ${format}
    WHERE r."shopId" = ${shop} AND p."roundId" IS NULL ${ofRoundsJob(shop, job)} ${SOMETHING_COUNTS}`;
}

import type { Stage } from '@/lib/measure';
import { Prisma } from '@/lib/store/generated/sqlite/client';
import { ask } from '@/lib/store/sql/ask';
import type { ShopId } from '@/lib/store/types';

/** Of a round `r`: some reading of it is not excluded. */
export const SOMETHING_COUNTS = Prisma.sql`AND EXISTS (
  SELECT 1 FROM "Setup" s JOIN "Observation" o ON o."setupId" = s."id" WHERE s."roundId" = r."id" AND o."n" > 0)`;

/** Of a job `j`: it is this one. */
export const ofJob = (job: string | undefined): Prisma.Sql =>
  job === undefined ? Prisma.empty : Prisma.sql`AND j."number" = ${job}`;

/** Of a round `r`: it is of this job. The job is found first, so that no other round of the shop is looked at. */
export const ofRoundsJob = (shop: ShopId, job: string | undefined): Prisma.Sql =>
  job === undefined
    ? Prisma.empty
    : Prisma.sql`AND r."jobId" = (SELECT "id" FROM "Job" WHERE "shopId" = ${shop} AND "number" = ${job})`;

export interface WaitingRound {
  job: string;
  stage: Stage;
  attempt: number;
  /** Version of the round's readings. */
  version: number;
}

/** Rounds, of one job or of all, whose verdict is absent, older than their readings, or made with another fit. */
export async function roundsWithoutVerdict(shop: ShopId, fit: number, job?: string): Promise<WaitingRound[]> {
  return ask<WaitingRound>`
    SELECT j."number" AS "job", r."stage", r."attempt", r."version"
    FROM "Round" r JOIN "Job" j ON j."id" = r."jobId"
      LEFT JOIN "RoundVerdict" v ON v."roundId" = r."id" AND v."roundVersion" = r."version" AND v."fitId" = ${fit}
    WHERE r."shopId" = ${shop} AND v."roundId" IS NULL ${ofRoundsJob(shop, job)} ${SOMETHING_COUNTS}`;
}

import { among } from '@/lib/store/sql/among';
import { ask } from '@/lib/store/sql/ask';

/** How many readings of each of these jobs are excluded; jobs without any are absent. */
export async function excludedByJob(jobs: readonly number[]): Promise<Map<number, number>> {
  const rows = await ask<{ jobId: number; excluded: bigint }>`
    SELECT s."jobId", sum(o."excluded") AS "excluded"
    FROM "Setup" s JOIN "Observation" o ON o."setupId" = s."id"
    WHERE s."jobId" ${among(jobs)} AND o."excluded" > 0 GROUP BY s."jobId"`;
  return new Map(rows.map(({ jobId, excluded }) => [jobId, Number(excluded)]));
}

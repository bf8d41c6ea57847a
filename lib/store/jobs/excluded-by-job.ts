import { among } from '@/lib/store/sql/among';
import { askAgain } from '@/lib/store/sql/ask';

export interface ExcludedRow {
  jobId: number;
  excluded: number | bigint;
}

/** How many readings of each of these jobs are excluded; jobs without any are absent. */
export const excludedInJobs = (jobs: readonly number[]): Promise<readonly ExcludedRow[]> =>
  askAgain<ExcludedRow>`
    SELECT s."jobId", sum(o."excluded") AS "excluded"
    FROM "Setup" s JOIN "Observation" o ON o."setupId" = s."id"
    WHERE s."jobId" ${among(jobs)} AND o."excluded" > 0 GROUP BY s."jobId"`;

export const countsByJob = (rows: readonly ExcludedRow[]): Map<number, number> =>
  new Map(rows.map(({ jobId, excluded }) => [jobId, Number(excluded)]));

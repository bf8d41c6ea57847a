import type { Job } from '@/lib/measure';
import { frozen, onceFor } from '@/lib/memory';
import { ask, askAgain } from '@/lib/store/sql/ask';
import type { JobFilter, ShopId } from '@/lib/store/types';
import { assembleJobs } from './assemble-jobs';
import { jobsThat } from './jobs-that';
import { SELECT_OBSERVATIONS, type ObservationRow } from './observation-rows';

/**
 * Jobs with their collapsed observations, by first reading, then number. Readings are not touched. What has no
 * reading that counts is left out: an observation, and a setup, round or job of nothing else.
 */
export async function loadJobs(shop: ShopId, filter: JobFilter = {}): Promise<Job[]> {
  const rows =
    await ask<ObservationRow>`${SELECT_OBSERVATIONS} WHERE ${jobsThat(shop, filter)} AND o."n" > 0`;
  return assembleJobs(rows);
}

/** One job, without rounds where every reading of it is excluded; null where the shop has none of this number. */
export async function getJob(shop: ShopId, job: string): Promise<Job | null> {
  const rows = await askAgain<ObservationRow>`
    ${SELECT_OBSERVATIONS} WHERE j."shopId" = ${shop} AND j."number" = ${job} AND o."n" > 0`;
  return assembled(rows) ?? withoutReadings(shop, job);
}

const assembled = onceFor((rows: readonly ObservationRow[]): Job | undefined =>
  frozen(assembleJobs(rows)[0]),
);

async function withoutReadings(shop: ShopId, number: string): Promise<Job | null> {
  const [row] = await ask<{ sheet: string | null }>`
    SELECT h."name" AS "sheet" FROM "Job" j JOIN "Sheet" h ON h."id" = j."sheetId"
    WHERE j."shopId" = ${shop} AND j."number" = ${number}`;
  return row === undefined ? null : { job: number, sheet: row.sheet, rounds: [] };
}

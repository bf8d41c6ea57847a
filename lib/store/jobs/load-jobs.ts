import type { Job } from '@/lib/measure';
import { database } from '@/lib/store/connection/database';
import { ask } from '@/lib/store/sql/ask';
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
  const rows = await ask<ObservationRow>`
    ${SELECT_OBSERVATIONS} WHERE j."shopId" = ${shop} AND j."number" = ${job} AND o."n" > 0`;
  return assembleJobs(rows)[0] ?? withoutReadings(shop, job);
}

async function withoutReadings(shop: ShopId, number: string): Promise<Job | null> {
  const where = { shopId_number: { shopId: shop, number } };
  const row = await database().job.findUnique({ where, select: { sheet: { select: { name: true } } } });
  return row && { job: number, sheet: row.sheet.name, rounds: [] };
}

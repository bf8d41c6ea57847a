import type { Job } from '@/lib/measure';
import { database } from '@/lib/store/connection/database';
import { Prisma } from '@/lib/store/generated/sqlite/client';
import { among } from '@/lib/store/sql/among';
import type { JobFilter, ShopId } from '@/lib/store/types';
import { assembleJobs } from './assemble-jobs';
import { jobWhere } from './job-where';
import { SELECT_OBSERVATIONS, type ObservationRow } from './observation-rows';

/** Jobs with their collapsed observations, by first reading, then number. Readings are not touched. */
export async function loadJobs(shop: ShopId, filter: JobFilter = {}): Promise<Job[]> {
  const everything = Object.values(filter).every((value) => value === undefined);
  const only = everything ? Prisma.empty : await onlyThese(shop, filter);
  const rows = await database().$queryRaw<
    ObservationRow[]
  >`${SELECT_OBSERVATIONS} WHERE j."shopId" = ${shop} ${only}`;
  return assembleJobs(rows);
}

/** One job; null where the shop has none of this number. */
export async function getJob(shop: ShopId, job: string): Promise<Job | null> {
  const rows = await database().$queryRaw<ObservationRow[]>`
    ${SELECT_OBSERVATIONS} WHERE j."shopId" = ${shop} AND j."number" = ${job}`;
  return assembleJobs(rows)[0] ?? null;
}

async function onlyThese(shop: ShopId, filter: JobFilter): Promise<Prisma.Sql> {
  const jobs = await database().job.findMany({ where: jobWhere(shop, filter), select: { id: true } });
  return Prisma.sql`AND j."id" ${among(jobs.map(({ id }) => id))}`;
}

import type { Reading } from '@/lib/measure';
import { frozen, onceFor } from '@/lib/memory';
import { Prisma } from '@/lib/store/generated/sqlite/client';
import { jobsThat } from '@/lib/store/jobs/jobs-that';
import { among } from '@/lib/store/sql/among';
import { ask, askAgain } from '@/lib/store/sql/ask';
import type { ReadingFilter, ShopId } from '@/lib/store/types';
import { READING_ORDER, readingOf, SELECT_READINGS, type ReadingRow } from './reading-rows';

/** Jobs whose readings are held at once. */
const JOBS_AT_ONCE = 100;

/**
 * Every reading that a filter shows, as last corrected and without those that were excluded, job after job in the order
 * they were opened, then by time. The fields of `JobFilter` choose whole jobs; the others choose within them. Holds a
 * few jobs at a time.
 */
export async function* readingsFor(
  shop: ShopId,
  filter: ReadingFilter = {},
): AsyncGenerator<Reading, void, undefined> {
  const { attempt, setup, gauge, quantity, repeated, ...jobFilter } = filter;
  const jobs = await ask<{ id: number }>`
    SELECT j."id" FROM "Job" j WHERE ${jobsThat(shop, jobFilter)} ORDER BY j."openedAt", j."number"`;
  const within = [
    attempt === undefined ? Prisma.empty : Prisma.sql`AND r."attempt" = ${attempt}`,
    setup === undefined ? Prisma.empty : Prisma.sql`AND s."label" = ${setup}`,
    gauge === undefined ? Prisma.empty : Prisma.sql`AND g."tag" = ${gauge}`,
    quantity === undefined ? Prisma.empty : Prisma.sql`AND d."quantity" = ${quantity}`,
    repeated === true ? Prisma.sql`AND o."n" > 1` : Prisma.empty,
  ];
  for (let start = 0; start < jobs.length; start += JOBS_AT_ONCE) {
    const ids = jobs.slice(start, start + JOBS_AT_ONCE).map(({ id }) => id);
    const rows = await ask<ReadingRow>`
      ${SELECT_READINGS} WHERE j."id" ${among(ids)} ${Prisma.join(within, ' ')} ${READING_ORDER}`;
    for (const row of rows) yield readingOf(row);
  }
}

/** The readings behind one setup that count, as last corrected, by time; empty where there is no such setup. */
export async function readingsOfSetup(shop: ShopId, job: string, setup: string): Promise<Reading[]> {
  const rows = await ask<ReadingRow>`
    ${SELECT_READINGS} WHERE j."shopId" = ${shop} AND j."number" = ${job} AND s."label" = ${setup} ${READING_ORDER}`;
  return rows.map(readingOf);
}

/** The readings of one job that count, as last corrected, by time; empty where there is no such job. */
export async function readingsOfJob(shop: ShopId, job: string): Promise<readonly Reading[]> {
  const rows = await askAgain<ReadingRow>`
    ${SELECT_READINGS} WHERE j."shopId" = ${shop} AND j."number" = ${job} ${READING_ORDER}`;
  return readingsOf(rows);
}

const readingsOf = onceFor((rows: readonly ReadingRow[]): readonly Reading[] => frozen(rows.map(readingOf)));

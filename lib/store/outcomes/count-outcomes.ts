import { SECTIONS } from '@/lib/measure';
import { database } from '@/lib/store/connection/database';
import { Prisma } from '@/lib/store/generated/sqlite/client';
import { jobWhere } from '@/lib/store/jobs/job-where';
import { among } from '@/lib/store/sql/among';
import type { JobFilter, OutcomeCount, OutcomeGrouping, ShopId } from '@/lib/store/types';

const KEYS: Record<Exclude<OutcomeGrouping, 'section'>, Prisma.Sql> = {
  shop: Prisma.sql`''`,
  month: Prisma.sql`o."month"`,
  technician: Prisma.sql`p."code"`,
  sheet: Prisma.sql`h."name"`,
};

/** Jobs with an answer and jobs right first time, grouped in the database, by key. Groups without a job are absent. */
export async function countOutcomes(
  shop: ShopId,
  by: OutcomeGrouping,
  filter: JobFilter = {},
): Promise<OutcomeCount[]> {
  const chosen = Object.values(filter).some((value) => value !== undefined);
  const only = chosen ? await onlyThese(shop, filter) : Prisma.empty;
  if (by === 'section') return countSections(shop, only);
  const rows = await database().$queryRaw<{ key: string | null; jobs: bigint; right: bigint }[]>`
    SELECT ${KEYS[by]} AS "key", count(*) AS "jobs", sum(CASE WHEN o."right" THEN 1 ELSE 0 END) AS "right"
    FROM "JobOutcome" o
      JOIN "Job" j ON j."id" = o."jobId"
      JOIN "Sheet" h ON h."id" = j."sheetId"
      LEFT JOIN "Person" p ON p."id" = o."technicianId"
    WHERE o."shopId" = ${shop} AND o."right" IS NOT NULL ${only}
    GROUP BY 1 ORDER BY 1`;
  return rows.flatMap(({ key, jobs, right }) =>
    key === null ? [] : [{ key, jobs: Number(jobs), right: Number(right) }],
  );
}

/** A section is right where none of its controlled dimensions is out, whatever the rest of the job came to. */
async function countSections(shop: ShopId, only: Prisma.Sql): Promise<OutcomeCount[]> {
  const counts: OutcomeCount[] = [];
  for (const section of SECTIONS) {
    const [controlled, out] = [Prisma.raw(`o."${section}Controlled"`), Prisma.raw(`o."${section}Out"`)];
    const [row] = await database().$queryRaw<{ jobs: bigint; right: bigint }[]>`
      SELECT count(*) AS "jobs", coalesce(sum(CASE WHEN ${out} = 0 THEN 1 ELSE 0 END), 0) AS "right"
      FROM "JobOutcome" o JOIN "Job" j ON j."id" = o."jobId"
      WHERE o."shopId" = ${shop} AND ${controlled} > 0 ${only}`;
    if (row !== undefined && Number(row.jobs) > 0) {
      counts.push({ key: section, jobs: Number(row.jobs), right: Number(row.right) });
    }
  }
  return counts;
}

async function onlyThese(shop: ShopId, filter: JobFilter): Promise<Prisma.Sql> {
  const jobs = await database().job.findMany({ where: jobWhere(shop, filter), select: { id: true } });
  return Prisma.sql`AND j."id" ${among(jobs.map(({ id }) => id))}`;
}

import { SECTIONS, type Section } from '@/lib/measure';
import { frozen, onceFor } from '@/lib/memory';
import { Prisma } from '@/lib/store/generated/sqlite/client';
import { jobsThat } from '@/lib/store/jobs/jobs-that';
import { askAgain } from '@/lib/store/sql/ask';
import type { JobFilter, OutcomeCount, OutcomeGrouping, ShopId } from '@/lib/store/types';

/** What jobs are grouped by, and the table that it stands in. */
const GROUPS: Record<Exclude<OutcomeGrouping, 'section'>, { key: Prisma.Sql; from: Prisma.Sql }> = {
  shop: { key: Prisma.sql`''`, from: Prisma.empty },
  month: { key: Prisma.sql`o."month"`, from: Prisma.empty },
  technician: {
    key: Prisma.sql`p."code"`,
    from: Prisma.sql`LEFT JOIN "Person" p ON p."id" = o."technicianId"`,
  },
  sheet: { key: Prisma.sql`h."name"`, from: Prisma.sql`JOIN "Sheet" h ON h."id" = j."sheetId"` },
};

/** Jobs with an answer and jobs right first time, grouped in the database, by key. Groups without a job are absent. */
export async function countOutcomes(
  shop: ShopId,
  by: OutcomeGrouping,
  filter: JobFilter = {},
): Promise<readonly OutcomeCount[]> {
  const only = Prisma.sql`AND ${jobsThat(shop, filter)}`;
  if (by === 'section') return countSections(shop, only);
  const { key, from } = GROUPS[by];
  const rows = await askAgain<CountRow>`
    SELECT ${key} AS "key", count(*) AS "jobs", sum(CASE WHEN o."right" THEN 1 ELSE 0 END) AS "right"
    FROM "JobOutcome" o JOIN "Job" j ON j."id" = o."jobId" ${from}
    WHERE o."shopId" = ${shop} AND o."right" IS NOT NULL ${only}
    GROUP BY 1 ORDER BY 1`;
  return countsOf(rows);
}

interface CountRow {
  key: string | null;
  jobs: bigint;
  right: bigint;
}

const countsOf = onceFor((rows: readonly CountRow[]): readonly OutcomeCount[] =>
  frozen(
    rows.flatMap(({ key, jobs, right }) =>
      key === null ? [] : [{ key, jobs: Number(jobs), right: Number(right) }],
    ),
  ),
);

/** A section is right where none of its controlled dimensions is out, whatever the rest of the job came to. */
async function countSections(shop: ShopId, only: Prisma.Sql): Promise<OutcomeCount[]> {
  const [row] = await askAgain<Record<string, number | bigint>>`
    SELECT ${Prisma.raw(SECTIONS.map(columnsOf).join(', '))}
    FROM "JobOutcome" o JOIN "Job" j ON j."id" = o."jobId" WHERE o."shopId" = ${shop} ${only}`;
  return SECTIONS.map((key) => ({
    key,
    jobs: Number(row?.[key] ?? 0),
    right: Number(row?.[`${key}Right`] ?? 0),
  })).filter(({ jobs }) => jobs > 0);
}

const columnsOf = (section: Section): string => {
  const controlled = `o."${section}Controlled" > 0`;
  return `count(CASE WHEN ${controlled} THEN 1 END) AS "${section}",
    count(CASE WHEN ${controlled} AND o."${section}Out" = 0 THEN 1 END) AS "${section}Right"`;
};

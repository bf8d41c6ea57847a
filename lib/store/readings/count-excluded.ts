import { Prisma } from '@/lib/store/generated/sqlite/client';
import { handIds } from '@/lib/store/jobs/hand-ids';
import { askAgain } from '@/lib/store/sql/ask';
import type { SetupFilter, ShopId } from '@/lib/store/types';

/** How many readings of these setups are excluded: whoever shows a figure made from the others says so beside it. */
export async function countExcluded(shop: ShopId, filter: SetupFilter = {}): Promise<number> {
  const conditions = await conditionsOf(filter, shop);
  // Excluded readings are few and have an index. A cross join holds SQLite to that order; by its own guess it would
  // look at every setup of the shop.
  const [row] = await askAgain<{ excluded: number | bigint | null }>`
    SELECT sum(o."excluded") AS "excluded"
    FROM "Observation" o CROSS JOIN "Setup" s CROSS JOIN "Job" j CROSS JOIN "Sheet" h CROSS JOIN "Dimension" d
    WHERE o."excluded" > 0 AND s."id" = o."setupId" AND j."id" = s."jobId" AND h."id" = j."sheetId"
      AND d."id" = o."dimensionId" AND s."shopId" = ${shop} ${conditions}`;
  return Number(row?.excluded ?? 0);
}

async function conditionsOf(
  { technician, gauge, job, sheet, section, from, to }: SetupFilter,
  shop: ShopId,
): Promise<Prisma.Sql> {
  const { technicianId, gaugeId } = await handIds(shop, { technician, gauge });
  const conditions = [
    technicianId === undefined ? Prisma.empty : Prisma.sql`AND s."technicianId" = ${technicianId}`,
    gaugeId === undefined ? Prisma.empty : Prisma.sql`AND s."gaugeId" = ${gaugeId}`,
    job === undefined ? Prisma.empty : Prisma.sql`AND j."number" = ${job}`,
    sheet === undefined ? Prisma.empty : Prisma.sql`AND h."name" = ${sheet}`,
    section === undefined ? Prisma.empty : Prisma.sql`AND d."section" = ${section}`,
    from === undefined ? Prisma.empty : Prisma.sql`AND s."hungAt" >= ${new Date(from)}`,
    to === undefined ? Prisma.empty : Prisma.sql`AND s."hungAt" < ${new Date(to)}`,
  ];
  return Prisma.join(conditions, ' ');
}

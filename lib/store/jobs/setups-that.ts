import { Prisma } from '@/lib/store/generated/sqlite/client';
import type { SetupFilter, ShopId } from '@/lib/store/types';
import { handIds } from './hand-ids';

/** The conditions that hold for the setups `s` of a shop that a filter shows. */
export async function setupsThat(
  shop: ShopId,
  { technician, gauge, job, sheet, section, from, to }: SetupFilter,
): Promise<Prisma.Sql> {
  const { technicianId, gaugeId } = await handIds(shop, { technician, gauge });
  const conditions = [
    Prisma.sql`s."shopId" = ${shop}`,
    ...(technicianId === undefined ? [] : [Prisma.sql`s."technicianId" = ${technicianId}`]),
    ...(gaugeId === undefined ? [] : [Prisma.sql`s."gaugeId" = ${gaugeId}`]),
    ...(job === undefined
      ? []
      : [Prisma.sql`s."jobId" IN (SELECT "id" FROM "Job" WHERE "shopId" = ${shop} AND "number" = ${job})`]),
    ...(sheet === undefined
      ? []
      : [
          Prisma.sql`EXISTS (SELECT 1 FROM "Job" j JOIN "Sheet" h ON h."id" = j."sheetId"
            WHERE j."id" = s."jobId" AND h."name" = ${sheet})`,
        ]),
    ...(section === undefined
      ? []
      : [
          Prisma.sql`EXISTS (SELECT 1 FROM "Observation" o JOIN "Dimension" d ON d."id" = o."dimensionId"
            WHERE o."setupId" = s."id" AND d."section" = ${section})`,
        ]),
    ...(from === undefined ? [] : [Prisma.sql`s."hungAt" >= ${new Date(from)}`]),
    ...(to === undefined ? [] : [Prisma.sql`s."hungAt" < ${new Date(to)}`]),
  ];
  return Prisma.join(conditions, ' AND ');
}

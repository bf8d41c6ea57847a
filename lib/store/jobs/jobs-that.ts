import { Prisma } from '@/lib/store/generated/sqlite/client';
import { jobsOf } from '@/lib/store/sql/named-jobs';
import type { JobFilter, ShopId } from '@/lib/store/types';
import { searchable } from './searchable';

/** The conditions that hold for the jobs `j` of a shop that a filter shows. */
export function jobsThat(shop: ShopId, filter: JobFilter): Prisma.Sql {
  const { search, stage, technician, sheet, from, to, jobs } = filter;
  const words = searchable(search ?? '')
    .split(/\s+/)
    .filter((word) => word !== '');
  const conditions = [
    jobsOf(shop, jobs),
    ...words.map((word) => Prisma.sql`j."searchText" LIKE ${`%${word}%`}`),
    ...(stage === undefined ? [] : [Prisma.sql`j."lastStage" = ${stage}`]),
    ...(technician === undefined
      ? []
      : [
          Prisma.sql`j."id" IN (SELECT t."jobId" FROM "Person" p JOIN "JobTechnician" t ON t."technicianId" = p."id"
            WHERE p."shopId" = ${shop} AND p."code" = ${technician})`,
        ]),
    ...(sheet === undefined
      ? []
      : [
          Prisma.sql`j."sheetId" IN (SELECT "id" FROM "Sheet" WHERE "shopId" = ${shop} AND "name" = ${sheet})`,
        ]),
    ...outcomeThat(filter),
    ...(from === undefined ? [] : [Prisma.sql`j."openedAt" >= ${new Date(from)}`]),
    ...(to === undefined ? [] : [Prisma.sql`j."openedAt" < ${new Date(to)}`]),
  ];
  return Prisma.join(conditions, ' AND ');
}

const OUT = {
  front: Prisma.sql`o."frontOut"`,
  center: Prisma.sql`o."centerOut"`,
  rear: Prisma.sql`o."rearOut"`,
};

function outcomeThat({ section, outcome }: JobFilter): Prisma.Sql[] {
  if (section === undefined && outcome === undefined) return [];
  const conditions = [
    ...(section === undefined ? [] : [Prisma.sql`${OUT[section]} > 0`]),
    ...(outcome === undefined
      ? []
      : [
          outcome === 'unknown'
            ? Prisma.sql`o."right" IS NULL`
            : Prisma.sql`o."right" = ${outcome === 'right'}`,
        ]),
  ];
  return [
    Prisma.sql`EXISTS (SELECT 1 FROM "JobOutcome" o WHERE o."jobId" = j."id" AND ${Prisma.join(conditions, ' AND ')})`,
  ];
}

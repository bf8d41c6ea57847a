import { Prisma } from '@/lib/store/generated/sqlite/client';
import type { ShopId } from '@/lib/store/types';
import { among } from './among';

/**
 * `IN` for the ids of jobs by their numbers, in place of asking for their shop: beside a shop and an order of time SQLite
 * walks through all that the shop has, and holds each row to the numbers.
 */
export const namedJobs = (shop: ShopId, numbers: readonly string[]): Prisma.Sql =>
  Prisma.sql`IN (SELECT "id" FROM "Job" WHERE "shopId" = ${shop} AND "number" ${among(numbers)})`;

/** Of the jobs `j`, those of a shop: all, or the named ones. */
export const jobsOf = (shop: ShopId, numbers?: readonly string[]): Prisma.Sql =>
  numbers === undefined ? Prisma.sql`j."shopId" = ${shop}` : Prisma.sql`j."id" ${namedJobs(shop, numbers)}`;

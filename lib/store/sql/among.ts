import { Prisma } from '@/lib/store/generated/sqlite/client';

/** `IN` for a list of any length, which travels as one value. */
export const among = (values: readonly (string | number)[]): Prisma.Sql =>
  Prisma.sql`IN (SELECT value FROM json_each(${JSON.stringify(values)}))`;

import { dialect } from '@/lib/store/dialect';
import type { Prisma } from '@/lib/store/generated/sqlite/client';

/** `IN` for a list of any length, which travels as one value. */
export const among = (values: readonly (string | number)[]): Prisma.Sql => dialect().among(values);

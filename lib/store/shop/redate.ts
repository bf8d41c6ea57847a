import { monthOf } from '@/lib/measure/month-of';
import { grouped } from '@/lib/measure/grouped';
import type { Queries } from '@/lib/store/connection/database';
import { among } from '@/lib/store/sql/among';
import type { ShopId } from '@/lib/store/types';

interface Dated {
  id: number;
  at: Date;
  month: string;
}

/**
 * Puts what is counted by month into the months of another time zone: only what lies hours from the end of one moves.
 */
export async function redate(queries: Queries, shop: ShopId, timeZone: string): Promise<void> {
  const moved = (rows: readonly Dated[]) => {
    const found = rows.flatMap(({ id, at, month }) => {
      const now = monthOf(at.getTime(), timeZone);
      return now === month ? [] : [{ id, now }];
    });
    return [...grouped(found, ({ now }) => now)].map(
      ([month, own]) => [month, among(own.map(({ id }) => id))] as const,
    );
  };
  const outcomes = await queries.$queryRaw<Dated[]>`
    SELECT "jobId" AS "id", "at", "month" FROM "JobOutcome" WHERE "shopId" = ${shop} AND "at" IS NOT NULL`;
  for (const [month, jobs] of moved(outcomes))
    await queries.$executeRaw`UPDATE "JobOutcome" SET "month" = ${month} WHERE "jobId" ${jobs}`;
  const proofs = await queries.$queryRaw<Dated[]>`
    SELECT DISTINCT p."setupId" AS "id", s."hungAt" AS "at", p."month"
    FROM "HeightProof" p JOIN "Setup" s ON s."id" = p."setupId" WHERE s."shopId" = ${shop}`;
  for (const [month, setups] of moved(proofs))
    await queries.$executeRaw`UPDATE "HeightProof" SET "month" = ${month} WHERE "setupId" ${setups}`;
}

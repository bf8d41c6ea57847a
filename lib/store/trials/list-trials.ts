import { Prisma } from '@/lib/store/generated/sqlite/client';
import { ask } from '@/lib/store/sql/ask';
import type { EnteredReading, ShopId, TrialRow } from '@/lib/store/types';
import { checkedPlan } from './plan';

interface Row {
  id: number;
  name: string;
  plan: unknown;
  createdAt: Date;
  closedAt: Date | null;
  entered: number | bigint;
}

const SELECT_TRIALS = Prisma.sql`
  SELECT t."id", t."name", t."plan", t."createdAt", t."closedAt",
    (SELECT count(*) FROM "TrialReading" r WHERE r."trialId" = t."id") AS "entered"
  FROM "Trial" t`;

const trial = ({ id, name, plan, createdAt, closedAt, entered }: Row): TrialRow => ({
  id,
  name,
  plan: checkedPlan(plan),
  entered: Number(entered),
  createdAt: createdAt.getTime(),
  closedAt: closedAt?.getTime() ?? null,
});

/** Every trial of the shop, the latest first. */
export async function listTrials(shop: ShopId): Promise<TrialRow[]> {
  const rows = await ask<Row>`${SELECT_TRIALS} WHERE t."shopId" = ${shop} ORDER BY t."id" DESC`;
  return rows.map(trial);
}

/** One trial with its readings, in the order of the run sheet. */
export async function getTrial(
  shop: ShopId,
  id: number,
): Promise<(TrialRow & { readings: EnteredReading[] }) | null> {
  const [row] = await ask<Row>`${SELECT_TRIALS} WHERE t."shopId" = ${shop} AND t."id" = ${id}`;
  if (row === undefined) return null;
  const readings = await ask<Omit<EnteredReading, 'at'> & { at: Date }>`
    SELECT r."run", r."repeat", r."value", r."at", p."code" AS "by"
    FROM "TrialReading" r JOIN "Person" p ON p."id" = r."personId"
    WHERE r."trialId" = ${id} ORDER BY r."run", r."repeat"`;
  return {
    ...trial(row),
    readings: readings.map(({ at, ...reading }) => ({ ...reading, at: at.getTime() })),
  };
}

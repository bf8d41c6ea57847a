import { database } from '@/lib/store/connection/database';
import type { EnteredReading, ShopId, TrialRow } from '@/lib/store/types';
import { checkedPlan } from './plan';

const columns = {
  ...{ id: true, name: true, plan: true, createdAt: true, closedAt: true },
  _count: { select: { readings: true } },
} as const;

interface Columns {
  id: number;
  name: string;
  plan: unknown;
  createdAt: Date;
  closedAt: Date | null;
  _count: { readings: number };
}

const trial = ({ id, name, plan, createdAt, closedAt, _count }: Columns): TrialRow => ({
  ...{ id, name, plan: checkedPlan(plan), entered: _count.readings },
  createdAt: createdAt.getTime(),
  closedAt: closedAt?.getTime() ?? null,
});

/** Every trial of the shop, the latest first. */
export async function listTrials(shop: ShopId): Promise<TrialRow[]> {
  const rows = await database().trial.findMany({
    where: { shopId: shop },
    select: columns,
    orderBy: { id: 'desc' },
  });
  return rows.map(trial);
}

/** One trial with its readings, in the order of the run sheet. */
export async function getTrial(
  shop: ShopId,
  id: number,
): Promise<(TrialRow & { readings: EnteredReading[] }) | null> {
  const row = await database().trial.findUnique({
    where: { shopId_id: { shopId: shop, id } },
    select: {
      ...columns,
      readings: {
        select: { run: true, repeat: true, value: true, at: true, person: { select: { code: true } } },
        orderBy: [{ run: 'asc' }, { repeat: 'asc' }],
      },
    },
  });
  if (row === null) return null;
  const readings = row.readings.map(({ person, at, ...reading }) => ({
    ...{ ...reading, by: person.code, at: at.getTime() },
  }));
  return { ...trial(row), readings };
}

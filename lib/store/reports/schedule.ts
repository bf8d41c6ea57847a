import { database, transaction } from '@/lib/store/connection/database';
import { writeTrace } from '@/lib/store/trace/write-trace';
import type { Actor, ShopId } from '@/lib/store/types';

export const REPORT_EVERY = ['day', 'week', 'month'] as const;
export type ReportEvery = (typeof REPORT_EVERY)[number];

/** When the batch report is made by itself: every day, Monday or first of the month, at this full hour. */
export interface ReportSchedule {
  every: ReportEvery;
  /** 0 to 23, in the shop's time zone. */
  hour: number;
  /** No report is due for a time before this. */
  setAt: number;
}

const PLAIN = { every: true, hour: true, setAt: true } as const;

const scheduleOf = (row: { every: string; hour: number; setAt: Date }): ReportSchedule => ({
  // The database holds no other words.
  every: row.every as ReportEvery,
  hour: row.hour,
  setAt: row.setAt.getTime(),
});

/** Null where no report is made by itself. */
export async function reportSchedule(shop: ShopId): Promise<ReportSchedule | null> {
  const row = await database().reportSchedule.findUnique({ where: { shopId: shop }, select: PLAIN });
  return row && scheduleOf(row);
}

/** Sets when the report is made by itself; null: no longer. */
export function setReportSchedule(
  shop: ShopId,
  wanted: Pick<ReportSchedule, 'every' | 'hour'> | null,
  actor: Actor,
  now = Date.now(),
): Promise<void> {
  return transaction(shop, async (queries) => {
    const before = await queries.reportSchedule.findUnique({ where: { shopId: shop } });
    if (wanted === null) {
      await queries.reportSchedule.deleteMany({ where: { shopId: shop } });
    } else {
      const { every, hour } = wanted;
      const values = { every, hour, setAt: new Date(now) };
      await queries.reportSchedule.upsert({
        where: { shopId: shop },
        create: { shopId: shop, ...values },
        update: values,
      });
    }
    await writeTrace(queries, shop, actor, {
      action: wanted === null ? 'stopped the report schedule' : 'set the report schedule',
      kind: 'report schedule',
      subject: 'report schedule',
      before: before && { every: before.every, hour: before.hour },
      after: wanted && { every: wanted.every, hour: wanted.hour },
    });
  });
}

/** The schedules of every shop of the database, with the zone that their hours are meant in. */
export async function allReportSchedules(): Promise<
  { shop: ShopId; timeZone: string; schedule: ReportSchedule }[]
> {
  const rows = await database().reportSchedule.findMany({
    select: { ...PLAIN, shopId: true, shop: { select: { timeZone: true } } },
    orderBy: { shopId: 'asc' },
  });
  return rows.map((row) => ({
    shop: row.shopId,
    timeZone: row.shop.timeZone,
    schedule: scheduleOf(row),
  }));
}

import { database, transaction } from '@/lib/store/connection/database';
import type { Json, ShopId } from '@/lib/store/types';

/** Reports that are kept; older ones are let go. */
export const REPORTS_KEPT = 12;

/** A report that is not done after so long was broken off with the program that made it, ms. */
export const BROKEN_OFF_AFTER = 60 * 60_000;

/** A report that was made by itself, or is being made. */
export interface ScheduledReport {
  id: number;
  dueAt: number;
  startedAt: number;
  /** Null while it is being made, and where it failed. */
  doneAt: number | null;
  /** Why there is none; null where nothing went wrong. */
  failed: string | null;
}

const PLAIN = { id: true, dueAt: true, startedAt: true, doneAt: true, failed: true } as const;

const plain = (row: {
  id: number;
  dueAt: Date;
  startedAt: Date;
  doneAt: Date | null;
  failed: string | null;
}): ScheduledReport => ({
  ...row,
  dueAt: row.dueAt.getTime(),
  startedAt: row.startedAt.getTime(),
  doneAt: row.doneAt?.getTime() ?? null,
});

/**
 * Takes the making of a report upon this process.
 * @returns its id; null where another process has it, or one for this time or a later one is there already (the
 * clock may have been set back).
 */
export function claimReport(shop: ShopId, dueAt: number, now = Date.now()): Promise<number | null> {
  return transaction(shop, async (queries) => {
    const last = await queries.scheduledReport.findFirst({
      where: { shopId: shop },
      orderBy: { dueAt: 'desc' },
      select: { dueAt: true },
    });
    if (last !== null && last.dueAt.getTime() >= dueAt) return null;
    const row = await queries.scheduledReport.create({
      data: { shopId: shop, dueAt: new Date(dueAt), startedAt: new Date(now) },
      select: { id: true },
    });
    return row.id;
  });
}

/** Keeps a report that was claimed, and lets the oldest go. */
export function keepReport(shop: ShopId, id: number, document: Json, now = Date.now()): Promise<void> {
  return transaction(shop, async (queries) => {
    if (document === null) throw new TypeError('A report is a document.');
    await queries.scheduledReport.updateMany({
      where: { shopId: shop, id, doneAt: null, failed: null },
      data: { document, doneAt: new Date(now) },
    });
    const kept = await queries.scheduledReport.findMany({
      where: { shopId: shop },
      orderBy: { dueAt: 'desc' },
      take: REPORTS_KEPT,
      select: { id: true },
    });
    await queries.scheduledReport.deleteMany({
      where: { shopId: shop, id: { notIn: kept.map((row) => row.id) } },
    });
  });
}

/** Says why a report that was claimed was not made. */
export async function failReport(shop: ShopId, id: number, why: string): Promise<void> {
  await database().scheduledReport.updateMany({
    where: { shopId: shop, id, doneAt: null, failed: null },
    data: { failed: why },
  });
}

/** Says of reports whose making was broken off that there is none. @returns how many these were. */
export async function failBrokenOff(now = Date.now()): Promise<number> {
  const { count } = await database().scheduledReport.updateMany({
    where: { doneAt: null, failed: null, startedAt: { lt: new Date(now - BROKEN_OFF_AFTER) } },
    data: { failed: 'The program was stopped while it made this report. The next one comes when it is due.' },
  });
  return count;
}

/** The shop's reports, newest first, without their documents. */
export async function scheduledReports(shop: ShopId): Promise<ScheduledReport[]> {
  const rows = await database().scheduledReport.findMany({
    where: { shopId: shop },
    orderBy: { dueAt: 'desc' },
    select: PLAIN,
  });
  return rows.map(plain);
}

/** One report with its document; null where the shop has none of this id. */
export async function scheduledReport(
  shop: ShopId,
  id: number,
): Promise<(ScheduledReport & { document: Json }) | null> {
  const row = await database().scheduledReport.findFirst({
    where: { shopId: shop, id },
    select: { ...PLAIN, document: true },
  });
  return row && { ...plain(row), document: row.document as Json };
}

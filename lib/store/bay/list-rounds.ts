import type { Stage } from '@/lib/measure';
import { database } from '@/lib/store/connection/database';
import type { BayRoundRow, ShopId } from '@/lib/store/types';

/** Rounds that are shown at once: those begun last. */
const MOST = 200;
const DAY = 86_400_000;
/** How long a finished round stays in the list, ms. */
const SHOWN_FOR = 7 * DAY;

/** Rounds beside the car that are open, and those finished in the last days; those begun last come first. */
export async function listBayRounds(shop: ShopId, code: string, now = Date.now()): Promise<BayRoundRow[]> {
  const db = database();
  const rows = await db.bayRound.findMany({
    where: {
      shopId: shop,
      OR: [{ finishedAt: null }, { finishedAt: { gte: new Date(now - SHOWN_FOR) } }],
    },
    include: { person: { select: { code: true } }, sheet: { select: { name: true } } },
    orderBy: [{ startedAt: 'desc' }, { id: 'desc' }],
    take: MOST,
  });
  const bayRoundId = { in: rows.map(({ id }) => id) };
  const [entries, readings, own] = await Promise.all([
    db.bayEntry.groupBy({ by: ['bayRoundId'], where: { bayRoundId }, _max: { receivedAt: true } }),
    db.bayEntry.groupBy({
      by: ['bayRoundId'],
      where: { bayRoundId, kind: 'read', conflict: null },
      _count: true,
    }),
    db.bayEntry.groupBy({ by: ['bayRoundId'], where: { bayRoundId, person: { code } } }),
  ]);
  const last = new Map(entries.map((one) => [one.bayRoundId, one._max.receivedAt?.getTime() ?? null]));
  const read = new Map(readings.map((one) => [one.bayRoundId, one._count]));
  const mine = new Set(own.map((one) => one.bayRoundId));
  return rows.map(({ id, job, sheet, stage, attempt, person, startedAt, finishedAt }) => ({
    ...{ id, job, attempt, sheet: sheet.name ?? '', by: person.code },
    // The database's CHECK holds the set of words.
    stage: stage as Stage,
    startedAt: startedAt.getTime(),
    finishedAt: finishedAt?.getTime() ?? null,
    lastEntryAt: last.get(id) ?? null,
    readings: read.get(id) ?? 0,
    mine: person.code === code || mine.has(id),
  }));
}

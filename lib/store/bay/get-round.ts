import type { BayHead } from '@/lib/bay';
import type { Section, Stage } from '@/lib/measure';
import { database } from '@/lib/store/connection/database';
import { dimensionColumns, dimensionOf } from '@/lib/store/sheets/dimension-row';
import { sideOf, type StoredSide } from '@/lib/store/sql/side';
import type { BayStanding, ShopId } from '@/lib/store/types';

/** A round beside the car with its sheet as it stands today; null where the shop has none of this id. */
export async function getBayRound(shop: ShopId, id: number): Promise<BayHead | null> {
  const row = await database().bayRound.findUnique({
    where: { shopId_id: { shopId: shop, id } },
    include: {
      person: { select: { code: true } },
      sheet: {
        select: {
          name: true,
          revision: true,
          dimensions: {
            select: dimensionColumns,
            orderBy: [{ quantity: 'asc' }, { point: 'asc' }, { side: 'asc' }, { nominal: 'asc' }],
          },
          points: {
            orderBy: [{ station: { sort: 'asc', nulls: 'first' } }, { letter: 'asc' }, { side: 'asc' }],
          },
        },
      },
    },
  });
  if (row === null) return null;
  const { job, attempt, clearance, sheet, person, startedAt, finishedAt } = row;
  const points = sheet.points.map(({ id: _, sheetId: __, side, section, ...point }) => ({
    ...point,
    side: sideOf(side as StoredSide),
    section: section as Section | null,
  }));
  const { name, revision, dimensions } = sheet;
  return {
    id,
    job,
    attempt,
    clearance,
    by: person.code,
    // The database's CHECK holds the set of words.
    stage: row.stage as Stage,
    sheet: { name: name ?? '', revision, points, dimensions: dimensions.map(dimensionOf) },
    startedAt: startedAt.getTime(),
    finishedAt: finishedAt?.getTime() ?? null,
  };
}

/** How somebody stands to a round; null where the shop has none of this id. */
export async function bayStanding(shop: ShopId, id: number, code: string): Promise<BayStanding | null> {
  const row = await database().bayRound.findUnique({
    where: { shopId_id: { shopId: shop, id } },
    select: { finishedAt: true, person: { select: { code: true } } },
  });
  if (row === null) return null;
  const { finishedAt, person } = row;
  if (finishedAt === null || person.code === code)
    return { finishedAt: finishedAt?.getTime() ?? null, tookPart: true };
  // What comes in late is kept, but opens nothing to whoever sends it.
  const own = await database().bayEntry.findFirst({
    where: { bayRoundId: id, receivedAt: { lte: finishedAt }, person: { code } },
    select: { id: true },
  });
  return { finishedAt: finishedAt.getTime(), tookPart: own !== null };
}

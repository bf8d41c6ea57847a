import { database } from '@/lib/store/connection/database';
import type { ShopId } from '@/lib/store/types';

const entered = {
  bayRoundId: true,
  device: true,
  sequence: true,
  kind: true,
  document: true,
  at: true,
  receivedAt: true,
  conflict: true,
} as const;
const round = {
  id: true,
  job: true,
  stage: true,
  attempt: true,
  clearance: true,
  startedAt: true,
  finishedAt: true,
} as const;

/** What one person began and entered beside the car, and what others entered for their hand. */
export async function atTheBay(shop: ShopId, personId: number) {
  const db = database();
  const [begun, entries, hung] = await Promise.all([
    db.bayRound.findMany({ where: { shopId: shop, personId }, select: round, orderBy: { id: 'asc' } }),
    db.bayEntry.findMany({ where: { shopId: shop, personId }, select: entered, orderBy: { id: 'asc' } }),
    db.bayEntry.findMany({
      where: { shopId: shop, handId: personId, personId: { not: personId } },
      select: entered,
      orderBy: { id: 'asc' },
    }),
  ]);
  const rounds = new Map(
    (await db.bayRound.findMany({ where: { shopId: shop }, select: round })).map((one) => [one.id, one]),
  );
  const told = ({ bayRoundId, document, ...rest }: (typeof entries)[number]) => {
    const { job, stage, attempt } = rounds.get(bayRoundId) ?? { job: null, stage: null, attempt: null };
    return { job, stage, attempt, ...rest, entry: document };
  };
  return {
    bayRoundsBegun: begun.map(({ id: _, ...one }) => one),
    bayEntries: entries.map(told),
    hungByThemEnteredByOthers: hung.map(told),
  };
}

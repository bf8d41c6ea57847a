import type { Entry } from '@/lib/bay';
import type { Stage } from '@/lib/measure';
import { transaction, type Queries } from '@/lib/store/connection/database';
import { personRow } from '@/lib/store/shop/person-row';
import type { Actor, BayEnterer, ShopId } from '@/lib/store/types';
import { documentOf } from './entry-row';
import { OutOfOrder } from './out-of-order';
import { takeIn } from './take/take-in';
import type { Taking } from './take/taking';

/**
 * Keeps entries of a round one after another, each together with what it does to the measurements. What is kept
 * already is passed over, so sending again does no harm. What contradicts what stands there is kept with the reason,
 * and changes no measurement.
 * @throws OutOfOrder where an entry does not follow on the last one of its device: those before it are kept.
 * @throws RangeError where the shop has no such round or person.
 */
export async function takeBayEntries(
  shop: ShopId,
  round: number,
  entries: readonly Entry[],
  enterer: BayEnterer,
  actor: Actor,
): Promise<void> {
  for (const entry of entries)
    await transaction(shop, (queries) => takeEntry(queries, shop, round, entry, enterer, actor));
}

async function takeEntry(
  queries: Queries,
  shop: ShopId,
  id: number,
  entry: Entry,
  { by, forOthers }: BayEnterer,
  actor: Actor,
): Promise<void> {
  const { key, device, sequence } = entry;
  const known = await queries.bayEntry.findUnique({
    where: { bayRoundId_key: { bayRoundId: id, key }, shopId: shop },
    select: { id: true },
  });
  if (known !== null) return;
  const row = await queries.bayRound.findUnique({
    where: { shopId_id: { shopId: shop, id } },
    include: { sheet: { select: { id: true, name: true } } },
  });
  if (row === null) throw new RangeError('The shop has no such round.');
  await requireOrder(queries, id, entry);
  const round = { ...row, stage: row.stage as Stage };
  const personId = await personRow(queries, shop, by);
  const taking: Taking = { queries, shop, round, by, personId, forOthers, actor, now: new Date() };
  const { conflict, handId = null, noSuchHand = false } = await takeIn(taking, entry);
  await queries.bayEntry.create({
    data: {
      shopId: shop,
      bayRoundId: id,
      key,
      device,
      sequence,
      personId,
      handId,
      conflict,
      kind: entry.body.kind,
      document: documentOf(entry, noSuchHand),
      at: new Date(entry.at),
      receivedAt: taking.now,
    },
  });
}

/** @throws OutOfOrder */
async function requireOrder(
  queries: Queries,
  bayRoundId: number,
  { device, sequence }: Entry,
): Promise<void> {
  const before = await queries.bayEntry.findFirst({
    where: { bayRoundId, device },
    orderBy: { sequence: 'desc' },
    select: { sequence: true },
  });
  const last = before?.sequence ?? 0;
  if (sequence !== last + 1) throw new OutOfOrder(device, sequence, last, sequence <= last);
}

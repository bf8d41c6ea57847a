import { database, transaction } from '@/lib/store/connection/database';
import { personRow } from '@/lib/store/shop/person-row';
import { subjectOf } from '@/lib/store/trace/subjects';
import { writeTrace } from '@/lib/store/trace/write-trace';
import { MISS_COST_RANGE, type Actor, type MissCost, type ShopId } from '@/lib/store/types';

const LOOKED_BACK = 20;

/**
 * Sets what missing damage costs against a needless re-hang, in the actor's name. Earlier values stay on record.
 * @throws RangeError where the cost is out of range, or the shop has nobody of this code.
 */
export async function setMissCost(
  shop: ShopId,
  { cost, at = Date.now() }: { cost: number; at?: number },
  actor: Actor,
): Promise<void> {
  const { least, most } = MISS_COST_RANGE;
  if (!(cost >= least && cost <= most))
    throw new RangeError(`${cost} is no such cost; write a number from ${least} to ${most}.`);
  await transaction(shop, async (queries) => {
    const personId = await personRow(queries, shop, actor.person);
    const last = await queries.missCost.findFirst({ where: { shopId: shop }, orderBy: { id: 'desc' } });
    await queries.missCost.create({ data: { shopId: shop, cost, personId, at: new Date(at) } });
    await writeTrace(queries, shop, actor, {
      action: 'changed',
      kind: 'miss cost',
      subject: subjectOf.shop,
      before: last && { cost: last.cost },
      after: { cost },
    });
  });
}

/** The latest values, newest first; empty where the default has always held. */
export async function missCosts(shop: ShopId): Promise<MissCost[]> {
  const rows = await database().missCost.findMany({
    where: { shopId: shop },
    select: { cost: true, at: true, person: { select: { code: true } } },
    orderBy: { id: 'desc' },
    take: LOOKED_BACK,
  });
  return rows.map(({ cost, at, person }) => ({ cost, at: at.getTime(), by: person?.code ?? null }));
}

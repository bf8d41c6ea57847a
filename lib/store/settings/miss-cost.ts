import { database, transaction } from '@/lib/store/connection/database';
import { MISS_COST_RANGE, type MissCost, type ShopId } from '@/lib/store/types';

const LOOKED_BACK = 20;

/**
 * Sets what missing damage costs against a needless re-hang. Earlier values stay on record.
 * @throws RangeError where the cost is out of range, or the shop has nobody of this code.
 */
export async function setMissCost(
  shop: ShopId,
  { cost, by, at = Date.now() }: Omit<MissCost, 'at'> & { at?: number },
): Promise<void> {
  const { least, most } = MISS_COST_RANGE;
  if (!(cost >= least && cost <= most))
    throw new RangeError(`${cost} is no such cost; write a number from ${least} to ${most}.`);
  await transaction(shop, async (queries) => {
    const person =
      by === null
        ? null
        : await queries.person.findUnique({ where: { shopId_code: { shopId: shop, code: by } } });
    if (by !== null && person === null) throw new RangeError(`The shop has nobody with the code ${by}.`);
    await queries.missCost.create({
      data: { shopId: shop, cost, personId: person?.id ?? null, at: new Date(at) },
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
